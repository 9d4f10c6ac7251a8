package chinelog.log.records;

import chinelog.problem.Place;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.TreeSet;

/**
 * A group of people for whom an edition is made.
 *
 * @param id such as {@code public}; also the name of its folder
 * @param title in words, such as "The client"
 * @param partyTo agreements under which they may see things
 * @param outputs what they get
 */
public record Readers(
    String id, String title, Set<String> partyTo, Set<Output> outputs, Place place) {

  /** These readers, if they are also party to another agreement. */
  public Readers with(String agreement) {
    Set<String> more = new TreeSet<>(partyTo);
    more.add(agreement);
    return new Readers(
        id, title, Collections.unmodifiableSet(new LinkedHashSet<>(more)), outputs, place);
  }

  /** The forms an edition takes. */
  public enum Output {
    SITE,
    BOOK,
    HANDOVER,

    /** The handover booklet two pages on a side, to be folded and stitched. */
    HANDOVER_SHEETS,

    /** The build book with bleed and crop marks, for a printing house. */
    PRINT_READY,

    /** Outlines at full size, to cut by: a PDF for the printer, and a file for a cutter each. */
    PATTERNS,

    /** A letter of how the build goes. */
    LETTER,

    /** The photographs of the last weeks, with their captions. */
    PHOTO_SHEET,

    /** What the next build would cost. */
    QUOTATION
  }
}
