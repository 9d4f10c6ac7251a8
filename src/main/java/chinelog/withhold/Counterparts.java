package chinelog.withhold;

import chinelog.reckon.Fact;
import chinelog.reckon.FactId;
import chinelog.reckon.Facts;
import chinelog.reckon.formula.Expression;
import chinelog.reckon.formula.Formula;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Pairs the subject's facts with the model's, {@code full.beam} with {@code hull.beam}, by what
 * follows the first part of the name. The model's first part is {@code hull} or {@code model}, or
 * any that the log itself pairs by a formula such as {@code hull.loa = full.loa / scale}.
 */
final class Counterparts {

  private final Facts facts;
  private final Set<String> groups = new TreeSet<>(Set.of("hull", "model"));

  Counterparts(Facts facts) {
    this.facts = facts;
    for (Fact fact : facts.byName().values()) {
      Expression formula = fact.formula();
      if (formula != null
          && Set.copyOf(Formula.names(formula))
              .equals(Set.of(fullSize(fact.id()), FactId.SCALE.name()))) {
        groups.add(fact.id().group());
      }
    }
  }

  private static String fullSize(FactId id) {
    return FactId.ofSubject(id.rest());
  }

  /** Names of the facts that tell the same of the subject (for the model's) or of the model. */
  List<String> of(FactId id) {
    List<String> others =
        id.isFullSize()
            ? groups.stream().map(g -> g + "." + id.rest()).toList()
            : groups.contains(id.group()) ? List.of(fullSize(id)) : List.of();
    return others.stream().filter(facts.byName()::containsKey).toList();
  }
}
