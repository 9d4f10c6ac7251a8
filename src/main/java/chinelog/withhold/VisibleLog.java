package chinelog.withhold;

import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.Lot;
import chinelog.log.records.Release;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import chinelog.reckon.Fact;
import chinelog.reckon.Facts;
import chinelog.reckon.LimitBook;
import chinelog.reckon.Reckoner;
import chinelog.withhold.question.Sight;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * The log as some readers could have it: without what nothing may show of, as if it had never been,
 * and with the facts reckoned over what is left, so that whether there is more cannot show in what
 * is made from it. What leaves a note stays in, under its agreement.
 *
 * <p>Texts and photographs stay as they are; what may not be seen of them is not copied.
 *
 * @param log what is left of it
 * @param facts of what is left, and those that were released
 * @param untold materials of which nothing is told, although some of their lots are open
 */
record VisibleLog(Log log, Facts facts, Set<String> untold) {

  static VisibleLog of(WholeLog whole, Account account) {
    Log left = new Redactor(whole, account).sift();
    if (left == whole.log()) {
      return all(whole);
    }
    Facts reckoned = reckon(left);
    Set<String> untold =
        reckoned.materials().stream()
            .filter(m -> reckoned.find(m.leftFact()).filter(VisibleLog::isNegative).isPresent())
            .map(Facts.MaterialSum::material)
            .collect(Collectors.toSet());
    if (!untold.isEmpty()) {
      left = without(left, untold);
    }
    Facts told = untold.isEmpty() ? reckoned : reckon(left);
    return new VisibleLog(left, withReleased(left, told, whole.facts(), account), untold);
  }

  /** The whole log, for those who may see all of it. */
  static VisibleLog all(WholeLog whole) {
    return new VisibleLog(whole.log(), whole.facts(), Set.of());
  }

  private static boolean isNegative(Fact fact) {
    return fact.value().value().signum() < 0;
  }

  /** No fact comes from a text; whether texts agree with the facts is asked of the whole log. */
  private static Facts reckon(Log log) {
    List<Entry> textless = log.entries().stream().map(e -> e.withText(List.of())).toList();
    return Reckoner.reckon(log.with(log.stock(), textless)).facts();
  }

  /**
   * Where the lots that are left do not cover what was used, any figure would tell that there are
   * others, and so nothing is told of the material.
   */
  private static Log without(Log log, Set<String> materials) {
    return log.with(
        log.stock().stream().filter(l -> !materials.contains(l.material())).toList(),
        log.entries().stream()
            .map(
                e ->
                    e.withUsed(
                        e.used().stream().filter(u -> !materials.contains(u.material())).toList()))
            .toList());
  }

  /** A figure that was released is told as the whole log has it, and limits are held against it. */
  private static Facts withReleased(Log left, Facts told, Facts whole, Account account) {
    Sight sight = account.sight();
    SortedMap<String, Fact> byName = new TreeMap<>(told.byName());
    for (Fact fact : whole.byName().values()) {
      if (!sight.allows(fact.label())
          && sight.allows(account.afterReleases(Release.Kind.FACT, fact.name(), fact.label()))) {
        byName.put(fact.name(), fact);
      }
    }
    return new Facts(
        Collections.unmodifiableSortedMap(byName),
        LimitBook.hold(left.limits(), byName),
        told.uses(),
        told.materials(),
        told.hoursByDay(),
        told.massGrowth(),
        told.drawings());
  }

  /** For the maker: of which materials nothing is told, and why. */
  List<Problem> reminders(WholeLog whole) {
    List<Problem> reminders = new ArrayList<>();
    for (String material : untold.stream().sorted().toList()) {
      Place place =
          whole.log().stock().stream()
              .filter(l -> l.material().equals(material))
              .map(Lot::place)
              .findFirst()
              .orElse(Place.of("stock.yaml"));
      reminders.add(
          Problem.reminder(
              place,
              Sentence.of(
                  "More is used of \"{0}\" than the lots hold that may be told, so that"
                      + " nothing is told of it.",
                  material),
              "Put its uses under the agreement too, or write \u201cpresence: note\u201d for it."));
    }
    return reminders;
  }
}
