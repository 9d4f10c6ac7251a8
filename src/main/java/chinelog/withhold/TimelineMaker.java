package chinelog.withhold;

import chinelog.edition.Drawing;
import chinelog.edition.Edition;
import chinelog.edition.Plate;
import chinelog.edition.Timeline;
import chinelog.log.records.Stage;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.reckon.Facts;
import chinelog.wording.Catalogue;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Lays the build out by day, from the entries that are told and from no others. */
final class TimelineMaker {

  private static final int FEWEST_DAYS = 3;
  private static final int FEWEST_STAGES = 2;

  private final VisibleLog visible;
  private final Catalogue words;
  private final LocalDate asOf;
  private final Map<String, BigDecimal> hours = new HashMap<>();

  /**
   * @param entryIds the edition's ids of the entries that it tells, by the log's
   */
  TimelineMaker(
      VisibleLog visible,
      FigureMaker figures,
      Catalogue words,
      LocalDate asOf,
      Map<String, String> entryIds) {
    this.visible = visible;
    this.words = words;
    this.asOf = asOf;
    for (Facts.DayHours day : visible.facts().hoursByDay()) {
      String entry = entryIds.get(day.entry());
      if (entry != null) {
        figures
            .find(day.fact())
            .ifPresent(
                f -> {
                  figures.show(f);
                  hours.merge(entry, inHours(f.value()), BigDecimal::add);
                });
      }
    }
  }

  private static BigDecimal inHours(Quantity quantity) {
    try {
      return quantity.valueIn(Unit.HOUR).setScale(2, RoundingMode.HALF_UP);
    } catch (QuantityException e) {
      throw new IllegalArgumentException(e.getMessage(), e);
    }
  }

  /** The build by day; empty where there is too little to be laid out. */
  Optional<Drawing> make(
      List<Edition.Stage> stages, List<Edition.Entry> entries, List<Plate> plates) {
    if (entries.stream().map(Edition.Entry::date).distinct().count() < FEWEST_DAYS) {
      return Optional.empty();
    }
    Map<String, Stage> plans =
        visible.log().stages().stream().collect(Collectors.toMap(Stage::id, s -> s, (a, b) -> a));
    List<Timeline.Row> rows = new ArrayList<>();
    for (Edition.Stage stage : stages) {
      List<Edition.Entry> own = entries.stream().filter(e -> e.stage().equals(stage.id())).toList();
      Timeline.Row row = row(stage, plans.get(stage.id()), own);
      if (!own.isEmpty() || row.start() != null) {
        rows.add(row);
      }
    }
    if (rows.size() < FEWEST_STAGES) {
      return Optional.empty();
    }
    SortedMap<LocalDate, Integer> photographed = new TreeMap<>();
    plates.stream()
        .map(Plate::date)
        .filter(day -> day != null)
        .forEach(day -> photographed.merge(day, 1, Integer::sum));
    List<LocalDate> days = new ArrayList<>(entries.stream().map(Edition.Entry::date).toList());
    for (Timeline.Row row : rows) {
      if (row.start() != null && row.finish() != null) {
        days.add(row.start());
        days.add(row.finish());
      }
    }
    LocalDate from = days.stream().min(LocalDate::compareTo).orElseThrow();
    LocalDate to = days.stream().max(LocalDate::compareTo).orElseThrow();
    boolean isPlanned = rows.stream().anyMatch(r -> r.start() != null);
    return Optional.of(
        new Timeline(
            "time",
            words.text("drawing.time"),
            words.text(isPlanned ? "drawing.time.about.plan" : "drawing.time.about"),
            from,
            to,
            rows,
            photographed.entrySet().stream()
                .filter(p -> !p.getKey().isBefore(from) && !p.getKey().isAfter(to))
                .map(p -> new Timeline.Count(p.getKey(), p.getValue()))
                .toList(),
            words.text("line.plates"),
            table(rows, isPlanned),
            List.of()));
  }

  private Timeline.Row row(Edition.Stage stage, @Nullable Stage plan, List<Edition.Entry> own) {
    SortedMap<LocalDate, BigDecimal> days = new TreeMap<>();
    own.forEach(
        e -> days.merge(e.date(), hours.getOrDefault(e.id(), BigDecimal.ZERO), BigDecimal::add));
    LocalDate start = plan == null ? null : plan.start();
    LocalDate finish = plan == null ? null : plan.finish();
    // Of what is still to come, an edition as of a day says nothing.
    boolean isTold = start != null && finish != null && !start.isAfter(asOf);
    return new Timeline.Row(
        stage.title(),
        isTold ? start : null,
        isTold ? finish : null,
        days.entrySet().stream().map(d -> new Timeline.Day(d.getKey(), d.getValue())).toList(),
        stage.progress() == Edition.Progress.DONE && !days.isEmpty() ? days.lastKey() : null);
  }

  private Drawing.Table table(List<Timeline.Row> rows, boolean isPlanned) {
    List<String> head = new ArrayList<>();
    head.add(words.text("drawing.time.stage"));
    if (isPlanned) {
      head.add(words.text("drawing.time.planned"));
    }
    head.add(words.text("drawing.time.worked"));
    head.add(words.text("drawing.time.days"));
    List<List<String>> lines = new ArrayList<>();
    for (Timeline.Row row : rows) {
      List<String> line = new ArrayList<>(List.of(row.title()));
      if (isPlanned) {
        line.add(span(row.start(), row.finish()));
      }
      List<Timeline.Day> days = row.days();
      line.add(days.isEmpty() ? "" : span(days.get(0).date(), days.get(days.size() - 1).date()));
      line.add(String.valueOf(days.size()));
      lines.add(line);
    }
    return new Drawing.Table(head, lines, false);
  }

  private String span(@Nullable LocalDate from, @Nullable LocalDate to) {
    if (from == null || to == null) {
      return "";
    }
    return from.equals(to)
        ? words.date(from)
        : words.text("dates.range", words.date(from), words.date(to));
  }
}
