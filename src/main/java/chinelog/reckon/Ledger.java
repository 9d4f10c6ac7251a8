package chinelog.reckon;

import chinelog.label.Label;
import chinelog.problem.Place;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.reckon.formula.Evaluator;
import chinelog.reckon.formula.Expression;
import chinelog.reckon.formula.Formula;
import chinelog.reckon.trade.KeptResults;
import chinelog.wording.Phrase;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** The facts found so far, by name. */
final class Ledger {

  private final SortedMap<String, Fact> facts = new TreeMap<>();
  private final Set<String> promised = new HashSet<>();
  private final List<Facts.Drawing> drawings = new ArrayList<>();
  private final Problems problems;
  private final KeptResults results;
  private final Roots roots = new Roots(this);

  /**
   * @param results of the trade's reckonings as they were the last time
   */
  Ledger(Problems problems, KeptResults results) {
    this.problems = problems;
    this.results = results;
  }

  KeptResults results() {
    return results;
  }

  void error(Place place, CharSequence what, CharSequence remedy) {
    problems.error(place, what, remedy);
  }

  void question(Place place, CharSequence what, CharSequence remedy) {
    problems.question(place, what, remedy);
  }

  void reminder(Place place, CharSequence what, CharSequence remedy) {
    problems.reminder(place, what, remedy);
  }

  /** What to do about a name that none of the facts has. */
  static CharSequence remedyFor(String name, Set<String> facts) {
    return name.equals(FactId.SCALE.name())
        ? "Write it in log.yaml, such as \"scale: 1:16\"."
        : Suggestion.findNearest(name, facts)
            .<CharSequence>map(Suggestion::of)
            .orElse("State it in facts.yaml, or measure it in an entry.");
  }

  /** Parts drawn so far. */
  List<Facts.Drawing> drawings() {
    return drawings;
  }

  Problems problems() {
    return problems;
  }

  Roots roots() {
    return roots;
  }

  SortedMap<String, Fact> facts() {
    return facts;
  }

  /** The log says how a fact, or all facts below a prefix, come about. */
  void promise(String name) {
    promised.add(name);
  }

  /** Whether the log promises a fact that could not be had; why has been told already. */
  boolean isBroken(String name) {
    if (facts.containsKey(name)) {
      return false;
    }
    boolean own = promised.contains(name);
    for (int dot = name.lastIndexOf('.'); dot > 0 && !own; dot = name.lastIndexOf('.', dot - 1)) {
      String prefix = name.substring(0, dot);
      own =
          promised.contains(prefix + ".")
              && facts.tailMap(prefix + ".").keySet().stream()
                  .findFirst()
                  .filter(f -> f.startsWith(prefix + "."))
                  .isEmpty();
    }
    return own && problems.hasErrors();
  }

  /** Takes a fact back whose trouble has been told. */
  void withdraw(String name) {
    facts.remove(name);
    promised.add(name);
  }

  Optional<Fact> find(String name) {
    return Optional.ofNullable(facts.get(name));
  }

  Optional<Fact> find(FactId id) {
    return find(id.name());
  }

  boolean has(FactId id) {
    return facts.containsKey(id.name());
  }

  /** Adds a fact; a second one of its name is a problem at the second's place. */
  void put(Fact fact) {
    Fact before = facts.putIfAbsent(fact.name(), fact);
    if (before != null) {
      problems.error(
          fact.place(),
          Sentence.of("There is already a fact \"{0}\" ({1}).", fact.name(), before.place()),
          "Give one of the two another name.");
    }
  }

  void amend(Fact fact) {
    facts.put(fact.name(), fact);
  }

  /** A fact that was written down rather than reckoned. */
  void given(
      FactId id,
      Phrase title,
      Quantity value,
      Origin origin,
      @Nullable LocalDate date,
      Label label,
      Place place,
      @Nullable String entry) {
    Basis none = Basis.of(List.of());
    put(
        new Fact(
            id, id.name(), title, value, origin, date, label, place, null, List.of(), List.of(),
            none, entry));
  }

  /** The sum of facts that are known to be of one kind; nothing if there are none to add. */
  void sum(FactId id, Phrase title, List<String> inputs, Label own, Place place) {
    if (inputs.isEmpty()) {
      return;
    }
    List<Expression> parts = inputs.stream().map(i -> (Expression) new Expression.Name(i)).toList();
    Expression tree =
        parts.size() == 1 ? parts.get(0) : new Expression.Call("sum", List.copyOf(parts));
    reckoned(id, title, tree, inputs, own, place, null);
  }

  /** A fact reckoned from those that a formula names, which are all here. */
  void reckoned(FactId id, Phrase title, Expression tree, Label own, Place place) {
    reckoned(id, title, tree, Formula.names(tree), own, place, null);
  }

  /** A fact reckoned from facts that are all here. */
  void reckoned(
      FactId id,
      Phrase title,
      Expression tree,
      List<String> inputs,
      Label own,
      Place place,
      @Nullable String entry) {
    try {
      Quantity value = Evaluator.evaluate(tree, n -> require(n).value());
      put(
          new Fact(
              id,
              id.name(),
              title,
              value,
              Origin.RECKONED,
              youngest(null, inputs),
              join(own, inputs),
              place,
              tree,
              List.of(),
              List.copyOf(inputs),
              Basis.of(inputs),
              entry));
    } catch (Evaluator.Fault fault) {
      QuantityException reason = fault.reason();
      problems.error(place, Sentence.of("\"{0}\": {1}", id.name(), reason.what()), reason.remedy());
    }
  }

  Fact require(String name) {
    Fact fact = facts.get(name);
    if (fact == null) {
      throw new IllegalStateException("no fact " + name);
    }
    return fact;
  }

  Label join(Label own, List<String> inputs) {
    Label label = own;
    for (String input : inputs) {
      label = label.join(require(input).label());
    }
    return label;
  }

  @Nullable LocalDate youngest(@Nullable LocalDate own, List<String> inputs) {
    LocalDate youngest = own;
    for (String input : inputs) {
      LocalDate date = require(input).date();
      youngest = youngest == null || date != null && date.isAfter(youngest) ? date : youngest;
    }
    return youngest;
  }

  /** An author's title; for want of one, the words of the name. */
  static Phrase title(String given, String name) {
    return Phrase.own(given.isEmpty() ? words(name) : given);
  }

  /** Words for a name without a title: "Hull loa" for {@code hull.loa}. */
  static String words(String name) {
    String words = name.replace('.', ' ').replace('_', ' ').strip();
    return words.isEmpty()
        ? name
        : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }
}
