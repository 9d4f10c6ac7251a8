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

  /** What money is under that nothing else is said of: the workshop's own. */
  public static final String OWN_MONEY = "own-money";

  /** What the client's name is under if nothing else is said of it: the workshop's own. */
  public static final String OWN_CLIENT = "own-client";

  /**
   * What the workshop keeps to itself without having promised it to anybody: nothing shows of it,
   * and it never ends.
   *
   * @param id {@link #OWN_MONEY} or {@link #OWN_CLIENT}
   */
  public static Agreement own(String id, String covers) {
    return new Agreement(id, "", covers, null, null, false, Presence.NOTHING);
  }

  /** Whether this is no promise to anybody, but what the workshop keeps to itself. */
  public boolean isOwn() {
    return isOwn(id);
  }

  public static boolean isOwn(String id) {
    return id.equals(OWN_MONEY) || id.equals(OWN_CLIENT);
  }

  /** Whether the passing of time alone has freed what this agreement covered. */
  public boolean isFreeOn(LocalDate day) {
    return freeAfterwards && until != null && day.isAfter(until);
  }
}
