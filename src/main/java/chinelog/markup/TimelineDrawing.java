package chinelog.markup;

import chinelog.edition.Diagram;
import chinelog.edition.Timeline;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The build by day: a row for each stage, and the photographs of each day beneath. */
final class TimelineDrawing {

  private static final double LEFT = 2;
  private static final double RIGHT = Diagram.WIDTH - 10;
  private static final double ROW = 27;
  private static final double TALLEST = 16;
  private static final double LEAST = 3;
  private static final double BAND = 4;
  private static final double DIAMOND = 3.6;

  /** Width of a sign by the height of the lettering, taken together. */
  private static final double SIGN = 0.52;

  private static final Brush.Look GRID = new Brush.Look("ink-rule", "none", "rule", 0.7, null);
  private static final Brush.Look BASE = new Brush.Look("ink-rule", "none", "rule", 0.7, null);
  private static final Brush.Look PLAN = new Brush.Look("ink-plan", "panel", "soft", 0.5, null);
  private static final Brush.Look WORK = new Brush.Look("ink-work", "accent", "none", 0, null);
  private static final Brush.Look DONE = new Brush.Look("ink-centroid", "ink", "paper", 0.8, null);
  private static final Brush.Look PLATE = new Brush.Look("ink-plate", "soft", "none", 0, null);

  private final Timeline timeline;
  private final Brush brush;
  private final Wording wording;
  private final double text;
  private final double perDay;
  private final double perHour;

  /**
   * @param text height of the lettering
   */
  TimelineDrawing(Timeline timeline, Brush brush, Wording wording, double text) {
    this.timeline = timeline;
    this.brush = brush;
    this.wording = wording;
    this.text = text;
    long days = ChronoUnit.DAYS.between(timeline.from(), timeline.to()) + 1;
    this.perDay = (RIGHT - LEFT) / days;
    double most =
        timeline.rows().stream()
            .flatMap(r -> r.days().stream())
            .mapToDouble(d -> d.hours().doubleValue())
            .max()
            .orElse(0);
    this.perHour = most > 0 ? TALLEST / most : 0;
  }

  /** Draws it and tells its height. */
  double draw() {
    double bottom = 4 + ROW * timeline.rows().size();
    double plates = timeline.plates().isEmpty() ? 0 : 16 + text;
    months(bottom + plates + 4);
    double y = 4;
    for (Timeline.Row row : timeline.rows()) {
      y += ROW;
      row(row, y - BAND - 3);
    }
    if (plates > 0) {
      brush.text(LEFT, bottom + text, timeline.photographs(), "start", true);
      for (Timeline.Count day : timeline.plates()) {
        double radius = Math.min(0.9 + 0.8 * Math.sqrt(day.number()), 5);
        brush.disc(middle(day.date()), bottom + text + 9, radius, PLATE);
      }
    }
    return bottom + plates + 8 + text;
  }

  private double start(LocalDate day) {
    return LEFT + ChronoUnit.DAYS.between(timeline.from(), day) * perDay;
  }

  private double middle(LocalDate day) {
    return start(day) + perDay / 2;
  }

  private void row(Timeline.Row row, double base) {
    LocalDate first = row.start();
    LocalDate last = row.finish();
    if (first != null && last != null) {
      double from = start(first);
      brush.path(box(from, base + 1, start(last.plusDays(1)) - from, BAND), PLAN);
    }
    List<Timeline.Day> days = row.days();
    double wide = Math.max(1.4, perDay - Math.min(0.8, perDay / 4));
    for (Timeline.Day day : days) {
      double high = Math.max(LEAST, day.hours().doubleValue() * perHour);
      brush.path(box(middle(day.date()) - wide / 2, base - high, wide, high), WORK);
    }
    double begin = first == null ? Double.MAX_VALUE : start(first);
    double end = last == null ? 0 : start(last.plusDays(1));
    if (!days.isEmpty()) {
      begin = Math.min(begin, start(days.get(0).date()));
      end = Math.max(end, start(days.get(days.size() - 1).date().plusDays(1)));
    }
    LocalDate done = row.done();
    if (done != null) {
      double at = start(done.plusDays(1)) + DIAMOND;
      brush.path(diamond(at, base - DIAMOND), DONE);
      end = Math.max(end, at + DIAMOND);
    }
    title(row.title(), begin, end, base);
  }

  /** After the row's last day where there is room, else before its first. */
  private void title(String title, double begin, double end, double base) {
    double wide = title.length() * text * SIGN;
    if (end + 6 + wide <= Diagram.WIDTH || begin < Diagram.WIDTH - end) {
      brush.text(end + 6, base - 1, title, "start", false);
    } else {
      brush.text(begin - 6, base - 1, title, "end", false);
    }
  }

  /** Lines where months begin, as many as there is room for, with their dates. */
  private void months(double bottom) {
    brush.path(
        "M" + ChartSvg.number(LEFT) + " " + ChartSvg.number(bottom) + "H" + ChartSvg.number(RIGHT),
        BASE);
    LocalDate month = timeline.from().withDayOfMonth(1);
    if (month.isBefore(timeline.from())) {
      month = month.plusMonths(1);
    }
    String widest = wording.shortDate(timeline.to());
    double room = widest.length() * text * SIGN + 14;
    int step = 1;
    while (step * 28 * perDay < room) {
      step += step < 3 ? 1 : step;
    }
    boolean isShort = month.isAfter(timeline.to());
    if (isShort) {
      date(timeline.from(), bottom, null);
      return;
    }
    if (start(month) - LEFT > room) {
      date(timeline.from(), bottom, null);
    }
    for (; !month.isAfter(timeline.to()); month = month.plusMonths(step)) {
      String x = ChartSvg.number(start(month));
      brush.path("M" + x + " 4V" + ChartSvg.number(bottom), GRID);
      date(month, bottom, start(month) + room > Diagram.WIDTH ? "end" : null);
    }
  }

  private void date(LocalDate day, double bottom, @Nullable String anchor) {
    brush.text(
        start(day),
        bottom + text + 1,
        wording.shortDate(day),
        anchor == null ? "start" : anchor,
        true);
  }

  private static String box(double x, double y, double width, double height) {
    return "M"
        + ChartSvg.number(x)
        + " "
        + ChartSvg.number(y)
        + "h"
        + ChartSvg.number(width)
        + "v"
        + ChartSvg.number(height)
        + "h"
        + ChartSvg.number(-width)
        + "z";
  }

  private static String diamond(double x, double y) {
    String d = ChartSvg.number(DIAMOND);
    return "M"
        + ChartSvg.number(x)
        + " "
        + ChartSvg.number(y - DIAMOND)
        + "l"
        + d
        + " "
        + d
        + "l-"
        + d
        + " "
        + d
        + "l-"
        + d
        + " -"
        + d
        + "z";
  }
}
