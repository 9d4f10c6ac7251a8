package chinelog.withhold;

import chinelog.reckon.Expression;
import chinelog.reckon.Fact;
import chinelog.reckon.Facts;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Pairs the subject's facts with the model's, {@code full.beam} with {@code hull.beam}, by what
 * follows the first part of the name. The model's first part is {@code hull} or {@code model}, or
 * any that the log itself pairs by a formula such as {@code hull.loa = full.loa / scale}.
 */
final class Counterparts {

  private static final String FULL = "full.";

  private final Facts facts;
  private final Set<String> beginnings = new TreeSet<>(Set.of("hull.", "model."));

  Counterparts(Facts facts) {
    this.facts = facts;
    for (Fact fact : facts.byName().values()) {
      Expression formula = fact.formula();
      if (formula != null && Names.in(formula).equals(Set.of(FULL + rest(fact.name()), "scale"))) {
        beginnings.add(beginning(fact.name()));
      }
    }
  }

  /** Names of the facts that tell the same of the subject (for the model's) or of the model. */
  List<String> of(String name) {
    Set<String> others = beginning(name).equals(FULL) ? beginnings : Set.of(FULL);
    if (!name.startsWith(FULL) && !beginnings.contains(beginning(name))) {
      return List.of();
    }
    return others.stream().map(b -> b + rest(name)).filter(facts.byName()::containsKey).toList();
  }

  private static String beginning(String name) {
    return name.substring(0, name.indexOf('.') + 1);
  }

  private static String rest(String name) {
    return name.substring(name.indexOf('.') + 1);
  }
}
