package chinelog.withhold;

import chinelog.log.records.Log;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import chinelog.reckon.Fact;
import chinelog.reckon.FactId;
import chinelog.reckon.Facts;
import chinelog.reckon.Similitude;
import chinelog.reckon.formula.Expression;
import chinelog.reckon.formula.Formula;
import chinelog.withhold.derive.Derivability;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * What a log's own figures are tied by: its formulas and sums, and full size = model × scale where
 * names pair two figures and no formula does.
 */
record DisclosingRelations(Log log, Facts facts, Web web, Cells cells) {

  List<Derivability.Relation> all() {
    List<Derivability.Relation> relations = new ArrayList<>(cells.relations());
    for (Derivability.Relation r : web.relations()) {
      relations.add(new Derivability.Relation(r.name(), cells.named(r.formula())));
    }
    Set<String> known = facts.byName().keySet();
    for (Fact fact : facts.byName().values()) {
      Expression formula = fact.formula() == null ? null : cells.named(fact.formula());
      // One of numbers alone is known to whoever wrote it, and ties the fact to no other.
      if (formula != null
          && !Formula.names(formula).isEmpty()
          && Formula.names(formula).stream()
              .allMatch(n -> known.contains(n) || cells.find(n).isPresent())) {
        relations.add(new Derivability.Relation(fact.name(), formula));
      }
    }
    facts.find(FactId.SCALE).ifPresent(scale -> addScaled(scale, relations));
    return relations;
  }

  /** Full size = model × scale, for facts whose names pair them and no formula does. */
  private void addScaled(Fact scale, List<Derivability.Relation> relations) {
    Counterparts counterparts = new Counterparts(facts);
    Set<Set<String>> paired = new HashSet<>();
    relations.forEach(
        r -> Formula.names(r.formula()).forEach(n -> paired.add(Set.of(r.name(), n))));
    for (Fact full : facts.byName().values()) {
      if (!full.id().isFullSize()) {
        continue;
      }
      for (String model : counterparts.of(full.id())) {
        facts
            .find(model)
            .filter(f -> f.value().unit().isCompatible(full.value().unit()))
            .filter(f -> !paired.contains(Set.of(full.name(), model)))
            .filter(f -> agree(f, full, scale))
            .ifPresent(
                f ->
                    relations.add(
                        new Derivability.Relation(full.name(), scaled(model, power(f.value())))));
      }
    }
  }

  /** Whether a model's fact is its full-size namesake to scale, within the log's closeness. */
  private boolean agree(Fact model, Fact full, Fact scale) {
    return Similitude.findFullSize(model.value(), scale.value())
        .map(f -> Math.abs(f.coherent() / full.value().coherent() - 1))
        .filter(error -> error <= log.head().closeness().doubleValue())
        .isPresent();
  }

  private static int power(Quantity model) {
    return Similitude.findFullSize(model, Quantity.of(2, Unit.ONE))
        .map(f -> (int) Math.round(Math.log(f.coherent() / model.coherent()) / Math.log(2)))
        .orElse(1);
  }

  private static Expression scaled(String model, int power) {
    Expression product = new Expression.Name(model);
    for (int i = 0; i < power; i++) {
      product = new Expression.Binary('*', product, new Expression.Name(FactId.SCALE.name()));
    }
    return product;
  }
}
