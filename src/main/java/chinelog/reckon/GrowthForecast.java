package chinelog.reckon;

import chinelog.label.Label;
import chinelog.log.Entry;
import chinelog.log.Log;
import chinelog.problem.Place;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * What the model will weigh when it is done: {@code growth.pace}, mass added for each hour since
 * the first weighing; {@code growth.forecast}, at this pace until the hours of {@code
 * plan.forecast} are worked; {@code growth.margin}, what the budget leaves over it.
 *
 * <p>The pace of the past holds for the rest: common practice, no source.
 */
final class GrowthForecast {

  private final Log log;
  private final Ledger ledger;

  GrowthForecast(Log log, Ledger ledger) {
    this.log = log;
    this.ledger = ledger;
  }

  void reckon(List<Facts.MassPoint> growth) {
    boolean told = growth.size() > 1 && isThere("plan.forecast") && isThere("mass.total");
    if (!told) {
      return;
    }
    Facts.MassPoint first = growth.get(0);
    List<String> since = hoursSince(first.day());
    boolean worked = since.stream().anyMatch(h -> ledger.require(h).value().value().signum() > 0);
    if (!worked) {
      return;
    }
    String until = first.day().toString();
    ledger.sum("growth.hours", Message.of("growth.hours", until), since, Label.NONE, place(first));
    inHours(ledger.require("growth.hours"));
    enter(
        "growth.pace",
        Message.of("growth.pace", until),
        over(minus("mass.total", first.fact()), name("growth.hours")),
        List.of("mass.total", first.fact(), "growth.hours"),
        first);
    enter(
        "growth.forecast",
        Message.of("growth.forecast"),
        new Expression.Binary(
            '+',
            name("mass.total"),
            new Expression.Binary('*', name("growth.pace"), minus("plan.forecast", "hours.total"))),
        List.of("mass.total", "growth.pace", "plan.forecast", "hours.total"),
        first);
    if (isThere("budget.mass") && isThere("growth.forecast")) {
      enter(
          "growth.margin",
          Message.of("growth.margin"),
          minus("budget.mass", "growth.forecast"),
          List.of("budget.mass", "growth.forecast"),
          first);
    }
  }

  /** Nobody adds mass by the minute. */
  private void inHours(Fact hours) {
    try {
      ledger.replace(hours.withValue(hours.value().in(Unit.HOUR)));
    } catch (QuantityException e) {
      throw new IllegalStateException("hours are a time", e);
    }
  }

  private List<String> hoursSince(LocalDate first) {
    List<String> hours = new ArrayList<>();
    for (Entry entry : log.entries()) {
      String fact = "hours.entry." + Ledger.part(entry.id());
      if (entry.date().isAfter(first) && isThere(fact)) {
        hours.add(fact);
      }
    }
    return hours;
  }

  private boolean isThere(String fact) {
    return ledger.find(fact).isPresent();
  }

  private Place place(Facts.MassPoint point) {
    return ledger.require(point.fact()).place();
  }

  private void enter(
      String fact, Message title, Expression tree, List<String> inputs, Facts.MassPoint first) {
    ledger.reckoned(fact, title, tree, inputs, Label.NONE, place(first), null);
  }

  private static Expression name(String fact) {
    return new Expression.Name(fact);
  }

  private static Expression minus(String whole, String part) {
    return new Expression.Binary('-', name(whole), name(part));
  }

  private static Expression over(Expression above, Expression below) {
    return new Expression.Binary('/', above, below);
  }
}
