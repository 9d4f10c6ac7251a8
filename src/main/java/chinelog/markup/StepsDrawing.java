package chinelog.markup;

import chinelog.edition.Chart;
import java.time.LocalDate;
import java.util.List;

/** Stepped lines over time: a value holds until the day of the next. */
final class StepsDrawing {

  private static final int LEFT = 50;
  private static final int PLOT_HEIGHT = 190;
  private static final int ROOM_FOR_DATES = 24;
  private static final int LABEL_HEIGHT = 17;

  private final Chart chart;
  private final ChartSvg sheet;
  private final Wording wording;
  private final List<LocalDate> dates;
  private final int right;

  StepsDrawing(Chart chart, ChartSvg sheet, Wording wording) {
    this.chart = chart;
    this.sheet = sheet;
    this.wording = wording;
    this.dates = chart.categories().stream().map(LocalDate::parse).toList();
    this.right = ChartSvg.WIDTH - roomForEndLabels(chart);
  }

  private static int roomForEndLabels(Chart chart) {
    return chart.series().stream()
        .filter(s -> !s.shown().isEmpty())
        .mapToInt(s -> 8 + (int) (7.4 * s.shown().get(s.shown().size() - 1).length()))
        .max()
        .orElse(8);
  }

  /** Draws from {@code top} down and tells the height of the whole. */
  int draw(int top) {
    int bottom = top + 8 + PLOT_HEIGHT;
    double step = gridStep();
    int lines = (int) Math.ceil(Math.max(chart.highest(), step) / step - 1e-9);
    double perUnit = PLOT_HEIGHT / (lines * step);
    for (int i = 0; i <= lines; i++) {
      double y = bottom - i * step * perUnit;
      sheet.grid(LEFT, y, right, y);
      sheet.label(LEFT - 7, y + 5, wording.number(i * step), "end", true);
    }
    if (!dates.isEmpty()) {
      dateLabels(bottom);
      for (int s = chart.series().size() - 1; s >= 0; s--) {
        sheet.line(path(chart.series().get(s), bottom, perUnit), s);
      }
      endLabels(bottom, perUnit);
    }
    return bottom + ROOM_FOR_DATES;
  }

  private void dateLabels(int bottom) {
    sheet.label(LEFT, bottom + 18, wording.shortDate(dates.get(0)), "start", true);
    if (dates.size() > 1) {
      LocalDate last = dates.get(dates.size() - 1);
      sheet.label(right, bottom + 18, wording.shortDate(last), "end", true);
    }
  }

  private String path(Chart.Series series, int bottom, double perUnit) {
    StringBuilder d = new StringBuilder("M");
    for (int i = 0; i < dates.size(); i++) {
      String x = ChartSvg.number(x(dates.get(i)));
      String y = ChartSvg.number(y(series, i, bottom, perUnit));
      d.append(i == 0 ? x + " " + y : "H" + x + "V" + y);
    }
    return dates.size() == 1 ? d.append("H").append(right).toString() : d.toString();
  }

  /** The last value of each series, moved apart where two would cover each other. */
  private void endLabels(int bottom, double perUnit) {
    int last = dates.size() - 1;
    double above = Double.NaN;
    for (int s = 0; s < chart.series().size(); s++) {
      Chart.Series series = chart.series().get(s);
      double y = y(series, last, bottom, perUnit);
      if (Math.abs(y - above) < LABEL_HEIGHT) {
        y = y < above ? above - LABEL_HEIGHT : above + LABEL_HEIGHT;
      }
      sheet.label(right + 6, y + 5, series.shown().get(last), "start", s > 0);
      above = y;
    }
  }

  private static double y(Chart.Series series, int index, int bottom, double perUnit) {
    return bottom - Math.max(0, series.values().get(index).doubleValue()) * perUnit;
  }

  private double x(LocalDate date) {
    long first = dates.get(0).toEpochDay();
    long days = dates.get(dates.size() - 1).toEpochDay() - first;
    return days == 0 ? LEFT : LEFT + (right - LEFT) * (date.toEpochDay() - first) / (double) days;
  }

  /** The smallest of 1, 2, 5, 10, 20 … that needs no more than five lines. */
  private double gridStep() {
    double rough = chart.highest() / 5;
    if (rough <= 0) {
      return 1;
    }
    double ten = Math.pow(10, Math.floor(Math.log10(rough)));
    for (int times : new int[] {1, 2, 5}) {
      if (rough <= times * ten * (1 + 1e-9)) {
        return times * ten;
      }
    }
    return 10 * ten;
  }
}
