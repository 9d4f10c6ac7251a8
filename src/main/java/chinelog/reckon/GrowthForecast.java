package chinelog.reckon;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.problem.Place;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.reckon.formula.Expression;
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
record GrowthForecast(Log log, Ledger ledger) {

  private static final FactId HOURS = new FactId.Expected(FactId.Expectation.HOURS);
  private static final FactId PACE = new FactId.Expected(FactId.Expectation.PACE);
  private static final FactId FORECAST = new FactId.Expected(FactId.Expectation.FORECAST);
  private static final FactId MARGIN = new FactId.Expected(FactId.Expectation.MARGIN);
  private static final FactId PLANNED = new FactId.Plan(FactId.Standing.FORECAST);

  void reckon(List<Facts.MassPoint> growth) {
    boolean told = growth.size() > 1 && ledger.has(PLANNED) && ledger.has(FactId.MASS);
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
    ledger.sum(HOURS, Message.of("growth.hours", until), since, Label.NONE, place(first));
    inHours(ledger.require(HOURS.name()));
    enter(
        PACE,
        Message.of("growth.pace", until),
        over(minus(name(FactId.MASS), new Expression.Name(first.fact())), name(HOURS)),
        first);
    enter(
        FORECAST,
        Message.of("growth.forecast"),
        new Expression.Binary(
            '+',
            name(FactId.MASS),
            new Expression.Binary('*', name(PACE), minus(name(PLANNED), name(FactId.HOURS)))),
        first);
    if (ledger.has(FactId.MASS_BUDGET) && ledger.has(FORECAST)) {
      enter(
          MARGIN,
          Message.of("growth.margin"),
          minus(name(FactId.MASS_BUDGET), name(FORECAST)),
          first);
    }
  }

  /** Nobody adds mass by the minute. */
  private void inHours(Fact hours) {
    try {
      ledger.amend(hours.withValue(hours.value().in(Unit.HOUR)));
    } catch (QuantityException e) {
      throw new IllegalStateException("hours are a time", e);
    }
  }

  private List<String> hoursSince(LocalDate first) {
    List<String> hours = new ArrayList<>();
    for (Entry entry : log.entries()) {
      FactId id = new FactId.Hours(FactId.Span.ENTRY, entry.id());
      if (entry.date().isAfter(first) && ledger.has(id)) {
        hours.add(id.name());
      }
    }
    return hours;
  }

  private Place place(Facts.MassPoint point) {
    return ledger.require(point.fact()).place();
  }

  private void enter(FactId id, Message title, Expression tree, Facts.MassPoint first) {
    ledger.reckoned(id, title, tree, Label.NONE, place(first));
  }

  private static Expression name(FactId id) {
    return new Expression.Name(id.name());
  }

  private static Expression minus(Expression whole, Expression part) {
    return new Expression.Binary('-', whole, part);
  }

  private static Expression over(Expression above, Expression below) {
    return new Expression.Binary('/', above, below);
  }
}
