package chinelog.label;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A promise of confidentiality.
 *
 * @param id the word used after {@code under}, such as {@code lines}
 * @param with the other party, as the maker writes it; itself under the agreement
 * @param covers what it covers, in the maker's words
 * @param from the day it was made; for the record only, since what is marked is covered whenever
 * @param until its last day, inclusive, in the log's zone; null means that it never ends
 * @param freeAfterwards whether its end frees what it covered; if not, only a release does
 * @param presence what readers see in the place of what is withheld under it
 */
public record Agreement(
    String id,
    String with,
    String covers,
    @Nullable LocalDate from,
    @Nullable LocalDate until,
    boolean freeAfterwards,
    Presence presence) {

  /** Whether the passing of time alone has freed what this agreement covered. */
  public boolean isFreeOn(LocalDate day) {
    return freeAfterwards && until != null && day.isAfter(until);
  }
}
