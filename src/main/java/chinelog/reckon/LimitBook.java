package chinelog.reckon;

import chinelog.label.Label;
import chinelog.log.Limit;
import chinelog.problem.Suggestion;
import chinelog.quantity.NumberStyle;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;

/** Holds each limit against its fact. */
final class LimitBook {

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
        ledger
            .problems()
            .error(
                FormulaNode.at(limit.place(), e.index()),
                "Limit \"" + limit.title() + "\": " + e.what(),
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
            "There is no fact \"" + name + "\".",
            Suggestion.findNearest(name, ledger.facts().keySet())
                .map(n -> "Did you mean \"" + n + "\"?")
                .orElse("State it in facts.yaml, or measure it in an entry."),
            0);
      }
    }
    try {
      String fact = leftFact(limit, rule.left());
      Quantity value = ledger.require(fact).value();
      Quantity bound = Evaluator.evaluate(rule.right().tree(), n -> ledger.require(n).value());
      Label label = ledger.join(limit.label(), List.copyOf(names));
      return Optional.of(judge(limit, fact, rule.comparison(), value, bound, label));
    } catch (Evaluator.Fault fault) {
      throw fault.reason();
    }
  }

  /** The fact on the left; a whole formula there becomes one, {@code limit.ID}. */
  private String leftFact(Limit limit, Formula left) {
    if (left.tree() instanceof Expression.Name name) {
      return name.name();
    }
    String name = "limit." + Ledger.part(limit.id());
    ledger.reckoned(
        name, limit.title(), left.tree(), left.names(), limit.label(), limit.place(), null);
    if (ledger.find(name).isEmpty()) {
      throw new Evaluator.Fault(
          left.tree(),
          new QuantityException("Its left side has no value.", "Correct the formula.", 0));
    }
    return name;
  }

  private Facts.LimitCheck judge(
      Limit limit, String fact, String comparison, Quantity value, Quantity bound, Label label)
      throws QuantityException {
    Quantity over = value.minus(bound).in(bound.unit());
    Quantity margin =
        switch (comparison.charAt(0)) {
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
    Facts.Verdict verdict = verdict(comparison, room, spread);
    if (verdict == Facts.Verdict.BROKEN) {
      ledger
          .problems()
          .reminder(
              limit.place(),
              "The limit \""
                  + limit.title()
                  + "\" ("
                  + limit.rule()
                  + ") is broken: \""
                  + fact
                  + "\" is "
                  + style.show(value)
                  + ".",
              "Change the model, or the rule if it is not meant so.");
    }
    return new Facts.LimitCheck(limit, fact, comparison, value, bound, margin, verdict, label);
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
