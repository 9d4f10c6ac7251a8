package chinelog.reckon;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.Stage;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import chinelog.reckon.formula.Expression;
import chinelog.wording.Message;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * How the build stands against its plan on the day of the last entry: {@code plan.due} (PV), {@code
 * plan.earned} (EV), {@code plan.schedule_index} (SPI), {@code plan.cost_index} (CPI), {@code
 * plan.forecast} (EAC) and {@code plan.forecast_days}.
 *
 * <p>A stage's planned hours fall due evenly from its first to its last day. A stage begun has
 * earned half of its planned hours, one left behind (a later stage of the plan has begun since its
 * last entry) or the last one past its finish all of them: the fifty-fifty rule, common practice.
 */
public final class PlanBook {

  private static final BigDecimal MOST_DAYS = BigDecimal.valueOf(36_525);
  private static final BigDecimal HALF = new BigDecimal("0.5");

  private static final FactId DUE = new FactId.Plan(FactId.Standing.DUE);
  private static final FactId EARNED = new FactId.Plan(FactId.Standing.EARNED);
  private static final FactId SCHEDULE_INDEX = new FactId.Plan(FactId.Standing.SCHEDULE_INDEX);
  private static final FactId COST_INDEX = new FactId.Plan(FactId.Standing.COST_INDEX);
  private static final FactId FORECAST = new FactId.Plan(FactId.Standing.FORECAST);
  private static final FactId DAYS = new FactId.Plan(FactId.Standing.DAYS);

  private final Log log;
  private final Ledger ledger;

  PlanBook(Log log, Ledger ledger) {
    this.log = log;
    this.ledger = ledger;
  }

  /**
   * The day on which the build will be finished if it goes on as it did, such as 12 May 2026, told
   * by {@code plan.forecast_days}; none where that is not reckoned, or once the day has come.
   */
  public static Optional<LocalDate> findForecastFinish(Log log, Facts facts) {
    Optional<LocalDate> start =
        log.stages().stream()
            .flatMap(s -> Optional.ofNullable(s.start()).stream())
            .min(LocalDate::compareTo);
    LocalDate today =
        log.entries().isEmpty() ? null : log.entries().get(log.entries().size() - 1).date();
    return facts
        .find(FactId.FORECAST_DAYS)
        .flatMap(days -> start.map(from -> finish(days, from)))
        .filter(day -> today != null && day.isAfter(today));
  }

  void reckon() {
    List<Stage> planned =
        log.stages().stream()
            .filter(s -> s.start() != null && s.finish() != null)
            .filter(s -> ledger.has(plan(s)))
            .toList();
    boolean whole = !planned.isEmpty() && planned.size() == log.stages().size();
    if (!whole || log.entries().isEmpty() || !ledger.has(FactId.HOURS)) {
      return;
    }
    LocalDate today = log.entries().get(log.entries().size() - 1).date();
    // What was done when decides the figures, so that every entry's agreements count.
    Label label = Label.NONE;
    for (Entry entry : log.entries()) {
      label = label.join(entry.label());
    }
    List<BigDecimal> due = planned.stream().map(s -> due(s, today)).toList();
    weighted(DUE, Message.of("plan.due", today), planned, due, label);
    weighted(EARNED, Message.of("plan.earned", today), planned, earned(planned), label);
    ratio(SCHEDULE_INDEX, Message.of("plan.schedule"), EARNED, DUE);
    ratio(COST_INDEX, Message.of("plan.cost"), EARNED, FactId.HOURS);
    ratio(FORECAST, Message.of("plan.forecast"), FactId.PLANNED_HOURS, COST_INDEX);
    days(planned);
  }

  private static FactId plan(Stage stage) {
    return new FactId.PlannedHours(FactId.Span.STAGE, stage.id());
  }

  /** The part of a stage that should be done by the end of {@code today}. */
  private static BigDecimal due(Stage stage, LocalDate today) {
    LocalDate start = require(stage.start());
    long days = ChronoUnit.DAYS.between(start, require(stage.finish())) + 1;
    long gone = Math.max(0, Math.min(days, ChronoUnit.DAYS.between(start, today) + 1));
    return days <= 0
        ? BigDecimal.ONE
        : BigDecimal.valueOf(gone).divide(BigDecimal.valueOf(days), MathContext.DECIMAL128);
  }

  private List<BigDecimal> earned(List<Stage> planned) {
    Map<String, LocalDate> last = new TreeMap<>();
    for (Entry entry : log.entries()) {
      last.put(entry.stage(), entry.date());
    }
    LocalDate today = log.entries().get(log.entries().size() - 1).date();
    List<BigDecimal> parts = new ArrayList<>();
    for (int i = 0; i < planned.size(); i++) {
      LocalDate left = last.get(planned.get(i).id());
      boolean followed = false;
      for (Stage later : planned.subList(i + 1, planned.size())) {
        LocalDate begun = last.get(later.id());
        followed |= left != null && begun != null && begun.isAfter(left);
      }
      boolean over = i == planned.size() - 1 && !today.isBefore(require(planned.get(i).finish()));
      parts.add(left == null ? BigDecimal.ZERO : followed || over ? BigDecimal.ONE : HALF);
    }
    return parts;
  }

  private void weighted(
      FactId id, Message title, List<Stage> planned, List<BigDecimal> parts, Label label) {
    List<Expression> terms = new ArrayList<>();
    Label all = label;
    for (int i = 0; i < planned.size(); i++) {
      BigDecimal part = parts.get(i);
      all = all.join(planned.get(i).label());
      if (part.signum() > 0) {
        Expression plan = new Expression.Name(plan(planned.get(i)).name());
        terms.add(
            part.compareTo(BigDecimal.ONE) == 0
                ? plan
                : new Expression.Binary(
                    '*', plan, new Expression.Literal(Quantity.of(part, Unit.ONE))));
      }
    }
    Expression sum =
        terms.isEmpty()
            ? new Expression.Literal(Quantity.of(0, Unit.HOUR))
            : new Expression.Call("sum", List.copyOf(terms));
    enter(id, title, sum, all);
  }

  private void ratio(FactId id, Message title, FactId above, FactId below) {
    boolean told =
        ledger.find(above).filter(PlanBook::isPositive).isPresent()
            && ledger.find(below).filter(PlanBook::isPositive).isPresent();
    if (told) {
      Expression tree =
          new Expression.Binary(
              '/', new Expression.Name(above.name()), new Expression.Name(below.name()));
      enter(id, title, tree, Label.NONE);
    }
  }

  private static boolean isPositive(Fact fact) {
    return fact.value().value().signum() > 0;
  }

  /** The whole plan's days, stretched as the work so far has been. */
  private void days(List<Stage> planned) {
    if (!ledger.has(SCHEDULE_INDEX)) {
      return;
    }
    LocalDate start =
        planned.stream().map(s -> require(s.start())).min(LocalDate::compareTo).orElseThrow();
    LocalDate finish =
        planned.stream().map(s -> require(s.finish())).max(LocalDate::compareTo).orElseThrow();
    Label label = Label.NONE;
    for (Stage stage : planned) {
      label = label.join(stage.label());
    }
    ledger.given(
        DAYS,
        Message.of("days.planned", start),
        Quantity.of(ChronoUnit.DAYS.between(start, finish) + 1, days()),
        Origin.STATED,
        null,
        label,
        Place.of("log.yaml"),
        null);
    ratio(FactId.FORECAST_DAYS, Message.of("days.forecast", start), DAYS, SCHEDULE_INDEX);
    ledger.find(FactId.FORECAST_DAYS).ifPresent(f -> nameTheDay(f, start));
  }

  /** A day begun is a day; what lies beyond any calendar is left as a number. */
  private static @Nullable LocalDate finish(Fact days, LocalDate start) {
    BigDecimal whole = days.value().value().setScale(0, RoundingMode.CEILING);
    return whole.compareTo(MOST_DAYS) > 0 ? null : start.plusDays(whole.longValueExact() - 1);
  }

  private void nameTheDay(Fact days, LocalDate start) {
    LocalDate finish = finish(days, start);
    if (finish != null) {
      ledger.amend(days.withTitle(Message.of("days.finish", start, finish)));
    }
  }

  private static Unit days() {
    try {
      return Unit.parse("d");
    } catch (chinelog.quantity.QuantityException e) {
      throw new IllegalStateException(e);
    }
  }

  private void enter(FactId id, Message title, Expression tree, Label label) {
    ledger.reckoned(id, title, tree, label, Place.of("log.yaml"));
  }

  private static LocalDate require(@Nullable LocalDate date) {
    if (date == null) {
      throw new IllegalStateException("a stage without dates is not planned");
    }
    return date;
  }
}
