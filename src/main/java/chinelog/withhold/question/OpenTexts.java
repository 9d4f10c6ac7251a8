package chinelog.withhold.question;

import chinelog.log.records.Log;
import chinelog.log.records.Readers;
import chinelog.photo.album.Album;
import chinelog.problem.Place;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Set;

/** What the maker wrote and some readers get, passage by passage. */
public final class OpenTexts {

  private OpenTexts() {}

  /**
   * A passage.
   *
   * @param what it is, such as "the caption of photos/a.jpg"
   * @param text of it, with a form feed where something is withheld
   */
  public record Open(Place place, CharSequence what, String text) {}

  /** All that the maker worded; names and titles of figures are shown by right. */
  public static List<Open> of(Log log, Album album, Readers readers, LocalDate asOf) {
    List<Open> all = new ArrayList<>();
    Sight sight = new Sight(log, readers, asOf);
    for (Passage passage : LogTexts.of(log, album)) {
      String text = passage.seen(sight);
      if (passage.role() == Passage.Role.PROSE && !text.isBlank()) {
        all.add(new Open(passage.place(), passage.what(), text));
      }
    }
    return all;
  }

  /**
   * What is left of a passage where only some of its sentences are kept; blanks between two of them
   * are kept, too, and everything else is one form feed.
   */
  public static String kept(Open passage, Set<String> sentences) {
    String text = passage.text();
    BitSet kept = new BitSet(text.length());
    for (String sentence : sentences) {
      for (int at = text.indexOf(sentence); at >= 0; at = text.indexOf(sentence, at + 1)) {
        kept.set(at, at + sentence.length());
      }
    }
    if (kept.isEmpty()) {
      return "";
    }
    StringBuilder left = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      if (kept.get(i) || Character.isWhitespace(text.charAt(i)) && text.charAt(i) != Passage.CUT) {
        left.append(text.charAt(i));
      } else if (left.isEmpty() || left.charAt(left.length() - 1) != Passage.CUT) {
        left.append(Passage.CUT);
      }
    }
    return left.toString();
  }
}
