package chinelog.log.reading;

import chinelog.problem.Place;
import chinelog.problem.Problems;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What every part of the reader must know of the whole.
 *
 * @param agreements known ids; null where log.yaml could not be read, so that any may be one
 * @param currency ISO 4217 code
 * @param loose whether the folder has no log.yaml, so that we take what we find
 */
public record Scope(
    Inventory inventory,
    LocalDate today,
    ZoneId zone,
    String currency,
    @Nullable Collection<String> agreements,
    boolean loose,
    Problems problems) {

  public void error(Place place, CharSequence what, CharSequence remedy) {
    problems.error(place, what, remedy);
  }

  public void reminder(Place place, CharSequence what, CharSequence remedy) {
    problems.reminder(place, what, remedy);
  }

  /** An error in a log; in a folder without log.yaml, whose owner never asked for more, a hint. */
  public void complain(Place place, CharSequence what, CharSequence remedy) {
    if (loose) {
      problems.reminder(place, what, remedy);
    } else {
      problems.error(place, what, remedy);
    }
  }

  public Collection<String> agreementsOrNone() {
    Collection<String> known = agreements;
    return known == null ? List.of() : known;
  }

  /** An amount of the log's money; of any, where its currency could not be read. */
  public Kind money() {
    return agreements == null ? Kind.ANY : Kind.money(currency);
  }

  public Kind moneyPerHour() {
    return agreements == null ? Kind.ANY : Kind.moneyPerHour(currency);
  }

  /** What a planned fact of this name must be. */
  public Kind budget(String fact) {
    String first = fact.split("\\.", 2)[0];
    return switch (first) {
      case "mass" -> Kind.MASS;
      case "hours" -> Kind.HOURS;
      case "cost" -> money();
      default -> Kind.ANY;
    };
  }
}
