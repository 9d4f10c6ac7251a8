package chinelog.log.records;

import chinelog.problem.Place;
import java.time.LocalDate;
import java.util.Set;

/**
 * A recorded permission to show one thing that is under an agreement.
 *
 * @param kind what sort of thing is released
 * @param name which one: a fact's name, an entry's id, a photo's path, a sheet's path with an
 *     optional page such as {@code sheets/lines.pdf#1}
 * @param agreement the agreement it is released from
 * @param by who gave the permission
 * @param on when
 * @param words in what words
 * @param readers for whom
 */
public record Release(
    Kind kind,
    String name,
    String agreement,
    String by,
    LocalDate on,
    String words,
    Set<String> readers,
    Place place) {

  /** What may be released. */
  public enum Kind {
    FACT,
    ENTRY,
    PHOTO,
    SHEET
  }
}
