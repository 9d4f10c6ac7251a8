package chinelog.reckon;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.Stage;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.temporal.IsoFields;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * Time at work, by entry, stage and week, and time planned.
 *
 * <p>All times are in minutes, which add up exactly.
 */
final class HoursBook {

  private final Log log;
  private final Ledger ledger;
  private final List<Facts.DayHours> days = new ArrayList<>();
  private final Map<String, List<String>> byStage = new TreeMap<>();
  private final Map<String, List<String>> byWeek = new TreeMap<>();

  HoursBook(Log log, Ledger ledger) {
    this.log = log;
    this.ledger = ledger;
  }

  List<Facts.DayHours> reckon() {
    log.entries().forEach(this::entry);
    List<String> stages = new ArrayList<>();
    for (Stage stage : log.stages()) {
      FactId id = new FactId.Hours(FactId.Span.STAGE, stage.id());
      List<String> entries = byStage.remove(stage.id());
      if (entries == null) {
        nothingYet(id, stage);
      } else {
        ledger.sum(
            id, Message.of("hours.stage", stage.title()), entries, stage.label(), stage.place());
        stages.add(id.name());
      }
      plan(stage);
    }
    // What remains belongs to no stage of the plan.
    byStage.values().forEach(stages::addAll);
    ledger.sum(
        FactId.HOURS,
        Message.of("hours.total"),
        stages,
        Label.NONE,
        log.stages().isEmpty() ? Place.of("entries") : Place.of("log.yaml"));
    byWeek.forEach(
        (week, entries) ->
            ledger.sum(
                new FactId.Hours(FactId.Span.WEEK, week),
                Message.of("hours.week", week.replace('_', '-').toUpperCase(Locale.ROOT)),
                entries,
                Label.NONE,
                ledger.require(entries.get(0)).place()));
    planTotal();
    return List.copyOf(days);
  }

  private void nothingYet(FactId id, Stage stage) {
    ledger.given(
        id,
        Message.of("hours.stage", stage.title()),
        Quantity.of(0, Unit.MINUTE),
        Origin.COUNTED,
        null,
        stage.label(),
        stage.place(),
        null);
  }

  private void entry(Entry entry) {
    if (entry.worked().isEmpty()) {
      return;
    }
    Duration total = Duration.ZERO;
    Label label = entry.label();
    for (Entry.Worked worked : entry.worked()) {
      total = total.plus(worked.duration());
      label = label.join(worked.label());
    }
    FactId id = new FactId.Hours(FactId.Span.ENTRY, entry.id());
    String name = id.name();
    ledger.given(
        id,
        Message.of("hours.entry", entry.date()),
        minutes(total),
        Origin.COUNTED,
        entry.date(),
        label,
        entry.worked().get(0).place(),
        entry.id());
    days.add(new Facts.DayHours(entry.date(), entry.id(), entry.stage(), name));
    byStage.computeIfAbsent(entry.stage(), s -> new ArrayList<>()).add(name);
    String week =
        String.format(
            Locale.ROOT,
            "%d_w%02d",
            entry.date().get(IsoFields.WEEK_BASED_YEAR),
            entry.date().get(IsoFields.WEEK_OF_WEEK_BASED_YEAR));
    byWeek.computeIfAbsent(week, w -> new ArrayList<>()).add(name);
  }

  private static Quantity minutes(Duration time) {
    BigDecimal seconds =
        BigDecimal.valueOf(time.getSeconds()).add(BigDecimal.valueOf(time.getNano(), 9));
    return Quantity.of(
        seconds.divide(BigDecimal.valueOf(60), java.math.MathContext.DECIMAL128), Unit.MINUTE);
  }

  private void plan(Stage stage) {
    Quantity hours = stage.hours();
    if (hours == null) {
      return;
    }
    if (!hours.unit().isCompatible(Unit.HOUR)) {
      ledger.error(
          stage.place(),
          Sentence.of("The planned hours of \"{0}\" are {1}, which is no time.", stage.id(), hours),
          "Write such as 18 h or 2 h 30 min.");
      return;
    }
    ledger.given(
        new FactId.PlannedHours(FactId.Span.STAGE, stage.id()),
        Message.of("hours.planned.stage", stage.title()),
        hours,
        Origin.STATED,
        null,
        stage.label(),
        stage.place(),
        null);
  }

  private void planTotal() {
    List<String> plans =
        log.stages().stream()
            .map(s -> new FactId.PlannedHours(FactId.Span.STAGE, s.id()))
            .filter(ledger::has)
            .map(FactId::name)
            .toList();
    ledger.sum(
        FactId.PLANNED_HOURS, Message.of("hours.planned"), plans, Label.NONE, Place.of("log.yaml"));
  }
}
