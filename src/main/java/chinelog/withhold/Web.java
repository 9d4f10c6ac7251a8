package chinelog.withhold;

import chinelog.problem.Place;
import chinelog.reckon.Fact;
import chinelog.reckon.Facts;
import chinelog.reckon.Origin;
import chinelog.reckon.formula.Expression;
import chinelog.reckon.formula.Formula;
import chinelog.withhold.derive.Derivability;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Brings facts of one log that were reckoned at several times, or over parts of it, to common
 * quantities: what was written down in one place is one quantity, whatever it is called; what is
 * reckoned from the same by the same formula is too; and all else is a quantity of its own, tied to
 * the others by its formula. So {@code hours.total} of the first of April and of the first of May
 * differ by the hours of the entries between.
 */
final class Web {

  private record Origins(Place place, Origin origin, String aspect) {}

  private final Facts whole;
  private final Map<Origins, Fact> leaves = new HashMap<>();
  private final Map<String, Double> values = new TreeMap<>();
  private final List<Derivability.Relation> relations = new ArrayList<>();

  /**
   * @param log as it is now; its facts keep their names
   */
  Web(WholeLog log) {
    this.whole = log.facts();
    for (Fact fact : whole.byName().values()) {
      if (isWritten(fact)) {
        leaves.put(origins(fact), fact);
      }
    }
  }

  private static boolean isWritten(Fact fact) {
    return fact.inputs().isEmpty() && fact.origin() != Origin.RECKONED;
  }

  private static Origins origins(Fact fact) {
    return new Origins(fact.place(), fact.origin(), fact.id().aspect());
  }

  /** Values of the quantities that are not the whole log's facts, by name. */
  Map<String, Double> others() {
    return values;
  }

  /** How these hang together with the rest. */
  List<Derivability.Relation> relations() {
    return relations;
  }

  /** A quantity that is added up from others. */
  void add(String name, double value, List<String> parts) {
    values.put(name, value);
    List<Expression> names = parts.stream().map(p -> (Expression) new Expression.Name(p)).toList();
    relations.add(
        new Derivability.Relation(
            name, names.size() == 1 ? names.get(0) : new Expression.Call("sum", names)));
  }

  /** Facts seen from one side. */
  Side side(Facts facts, String called) {
    return new Side(facts, called);
  }

  /** The facts of one time or part. */
  final class Side {
    private final Facts facts;
    private final String called;
    private final Map<String, String> quantities = new HashMap<>();

    /**
     * @param called added to the names of what is found here only, such as {@code , as told}
     */
    private Side(Facts facts, String called) {
      this.facts = facts;
      this.called = called;
    }

    Optional<Fact> find(String name) {
      return facts.find(name);
    }

    /** The name of the quantity that a fact of this side is. */
    String quantity(Fact fact) {
      String known = quantities.get(fact.name());
      if (known == null) {
        known = find(fact);
        quantities.put(fact.name(), known);
      }
      return known;
    }

    private String find(Fact fact) {
      Fact namesake = whole.find(fact.name()).orElse(null);
      if (fact == namesake) {
        return fact.name();
      }
      if (isWritten(fact)) {
        Fact leaf = leaves.get(origins(fact));
        return leaf != null && leaf.value().equals(fact.value()) ? leaf.name() : other(fact, null);
      }
      boolean tied = fact.inputs().stream().allMatch(n -> facts.find(n).isPresent());
      List<String> inputs =
          fact.inputs().stream().map(n -> facts.find(n).map(this::quantity).orElse(n)).toList();
      Map<String, String> renamed = new HashMap<>();
      for (int i = 0; i < inputs.size(); i++) {
        renamed.put(fact.inputs().get(i), inputs.get(i));
      }
      Expression formula =
          fact.formula() == null
              ? null
              : Formula.rename(fact.formula(), n -> renamed.getOrDefault(n, n));
      boolean same =
          namesake != null
              && namesake.inputs().equals(inputs)
              && Objects.equals(namesake.formula(), formula)
              && namesake.value().equals(fact.value());
      return same ? fact.name() : other(fact, tied ? formula : null);
    }

    private String other(Fact fact, @Nullable Expression formula) {
      String name = fact.name() + called;
      values.put(name, fact.value().coherent());
      if (formula != null) {
        relations.add(new Derivability.Relation(name, formula));
      }
      return name;
    }
  }
}
