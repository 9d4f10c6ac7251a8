package chinelog.reckon;

import chinelog.label.Label;
import chinelog.log.records.Limit;
import chinelog.problem.Sentence;
import chinelog.quantity.NumberStyle;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.reckon.formula.Evaluator;
import chinelog.reckon.formula.Expression;
import chinelog.reckon.formula.Formula;
import chinelog.reckon.formula.FormulaParser;
import chinelog.wording.Phrase;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** Holds each limit against its fact. */
public final class LimitBook {

  private final Ledger ledger;
  private final NumberStyle style;

  LimitBook(Ledger ledger, NumberStyle style) {
    this.ledger = ledger;
    this.style = style;
  }

  List<Facts.LimitCheck> check(List<Limit> limits) {
    List<Facts.LimitCheck> checks = new ArrayList<>();
    for (Limit limit : limits) {
      try {
        check(limit, FormulaParser.parseRule(limit.rule())).ifPresent(checks::add);
      } catch (QuantityException e) {
        ledger.error(
            FormulaNode.at(limit.place(), e.index()),
            Sentence.of("Limit \"{0}\": {1}", limit.title(), e.what()),
            e.remedy());
      }
    }
    return List.copyOf(checks);
  }

  private Optional<Facts.LimitCheck> check(Limit limit, FormulaParser.Rule rule)
      throws QuantityException {
    LinkedHashSet<String> names = new LinkedHashSet<>(rule.left().names());
    names.addAll(rule.right().names());
    if (names.stream().anyMatch(ledger::isBroken)) {
      return Optional.empty();
    }
    for (String name : names) {
      if (ledger.find(name).isEmpty()) {
        throw new QuantityException(
            Sentence.of("There is no fact \"{0}\".", name),
            Ledger.remedyFor(name, ledger.facts().keySet()),
            0);
      }
    }
    try {
      String fact = leftFact(limit, rule.left());
      Facts.LimitCheck check = judge(limit, fact, rule, ledger.facts());
      remind(check);
      return Optional.of(check);
    } catch (Evaluator.Fault fault) {
      throw fault.reason();
    }
  }

  /**
   * Holds limits against facts from here and there; a limit of which one is missing, or that cannot
   * be reckoned, is left out.
   */
  public static List<Facts.LimitCheck> hold(List<Limit> limits, Map<String, Fact> facts) {
    List<Facts.LimitCheck> checks = new ArrayList<>();
    for (Limit limit : limits) {
      try {
        FormulaParser.Rule rule = FormulaParser.parseRule(limit.rule());
        String fact = fact(limit, rule.left());
        if (facts.containsKey(fact) && facts.keySet().containsAll(rule.right().names())) {
          checks.add(judge(limit, fact, rule, facts));
        }
      } catch (QuantityException | Evaluator.Fault e) {
        // Of the whole log, each of these is a problem that was told.
      }
    }
    return List.copyOf(checks);
  }

  /** Name of the fact on the left, which is the limit's own where a whole formula stands there. */
  private static String fact(Limit limit, Formula left) {
    return left.tree() instanceof Expression.Name name
        ? name.name()
        : new FactId.LimitSide(limit.id()).name();
  }

  /** The fact on the left; a whole formula there becomes one, {@code limit.ID}. */
  private String leftFact(Limit limit, Formula left) {
    String name = fact(limit, left);
    if (left.tree() instanceof Expression.Name) {
      return name;
    }
    ledger.reckoned(
        new FactId.LimitSide(limit.id()),
        Phrase.own(limit.title()),
        left.tree(),
        limit.label(),
        limit.place());
    if (ledger.find(name).isEmpty()) {
      throw new Evaluator.Fault(
          left.tree(),
          new QuantityException("Its left side has no value.", "Correct the formula.", 0));
    }
    return name;
  }

  private static Facts.LimitCheck judge(
      Limit limit, String fact, FormulaParser.Rule rule, Map<String, Fact> facts)
      throws QuantityException {
    List<String> names = new ArrayList<>(rule.right().names());
    names.add(fact);
    Label label = limit.label();
    for (String name : names) {
      label = label.join(require(facts, name).label());
    }
    Quantity value = require(facts, fact).value();
    Quantity bound = Evaluator.evaluate(rule.right().tree(), n -> require(facts, n).value());
    Quantity over = value.minus(bound).in(bound.unit());
    Quantity margin =
        switch (rule.comparison().charAt(0)) {
          case '<' -> over.negated();
          case '>' -> over;
          default -> over.abs().negated();
        };
    BigDecimal room = margin.value();
    // What differs in the 25th digit only is equal: it was divided on the way.
    if (room.abs().compareTo(bound.value().abs().movePointLeft(25)) <= 0) {
      room = BigDecimal.ZERO;
      margin = margin.times(BigDecimal.ZERO);
    }
    BigDecimal spread = over.tolerance() == null ? BigDecimal.ZERO : over.tolerance();
    return new Facts.LimitCheck(
        limit,
        fact,
        List.copyOf(names),
        rule.comparison(),
        value.in(bound.unit()),
        bound,
        margin,
        verdict(rule.comparison(), room, spread),
        label);
  }

  private static Fact require(Map<String, Fact> facts, String name) {
    return Objects.requireNonNull(facts.get(name), name);
  }

  private void remind(Facts.LimitCheck check) {
    if (check.verdict() == Facts.Verdict.BROKEN) {
      ledger.reminder(
          check.limit().place(),
          Sentence.of(
              "The limit \"{0}\" ({1}) is broken: \"{2}\" is {3}.",
              check.limit().title(), check.limit().rule(), check.fact(), style.show(check.value())),
          "Change the model, or the rule if it is not meant so.");
    }
  }

  private static Facts.Verdict verdict(String comparison, BigDecimal room, BigDecimal spread) {
    if (comparison.equals("=")) {
      return room.signum() == 0
          ? spread.signum() == 0 ? Facts.Verdict.KEPT : Facts.Verdict.CLOSE
          : room.negate().compareTo(spread) <= 0 ? Facts.Verdict.CLOSE : Facts.Verdict.BROKEN;
    }
    boolean strict = comparison.length() == 1;
    if (room.signum() < 0 || strict && room.signum() == 0) {
      return Facts.Verdict.BROKEN;
    }
    return room.compareTo(spread) < 0 ? Facts.Verdict.CLOSE : Facts.Verdict.KEPT;
  }
}
