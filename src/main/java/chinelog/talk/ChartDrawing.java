package chinelog.talk;

import chinelog.edition.Chart;
import chinelog.markup.Theme;
import chinelog.markup.Wording;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;

/** Draws a chart on a card. Its first series is full, its second outlined or broken. */
final class ChartDrawing {

  private static final double TYPE = 30;
  private static final double GAP = 16;

  private final Graphics2D g;
  private final Chart chart;
  private final Wording wording;
  private final Lettering plain;
  private final Lettering strong;
  private final Color ink;
  private final Color soft;
  private final Color accent;

  ChartDrawing(
      Graphics2D g, Chart chart, Theme theme, Wording wording, Lettering plain, Lettering strong) {
    this.wording = wording;
    this.g = g;
    this.chart = chart;
    this.plain = plain;
    this.strong = strong;
    this.ink = Color.decode(theme.value("ink"));
    this.soft = Color.decode(theme.value("soft"));
    this.accent = Color.decode(theme.value("accent"));
  }

  void draw(double x, double y, double wide, double high) throws IOException {
    double top = y;
    if (chart.series().size() > 1) {
      legend(x, y);
      top += 54;
    }
    switch (chart.kind()) {
      case BARS -> bars(x, top, wide, y + high - top);
      case STEPS -> steps(x, top, wide, y + high - top);
    }
  }

  private void legend(double x, double y) throws IOException {
    double at = x;
    for (int s = 0; s < chart.series().size(); s++) {
      swatch(at, y + 2, 34, 22, s);
      g.setColor(ink);
      plain.draw(g, chart.series().get(s).name(), at + 48, y + 24, TYPE);
      at += 48 + plain.width(chart.series().get(s).name(), TYPE) + 60;
    }
  }

  private void swatch(double x, double y, double wide, double high, int series) {
    g.setColor(series == 0 ? accent : soft);
    if (series == 0) {
      g.fill(new Rectangle2D.Double(x, y, wide, high));
    } else {
      g.setStroke(new BasicStroke(3));
      g.draw(new Rectangle2D.Double(x + 1.5, y + 1.5, Math.max(0, wide - 3), high - 3));
    }
  }

  private void bars(double x, double y, double wide, double high) throws IOException {
    int groups = Math.max(1, chart.categories().size());
    double step = Math.min(high / groups, 110);
    double type = Math.min(TYPE, step * 0.42);
    double names = 0;
    double shown = 0;
    for (String category : chart.categories()) {
      names = Math.max(names, plain.width(category, type));
    }
    for (Chart.Series series : chart.series()) {
      for (String value : series.shown()) {
        shown = Math.max(shown, strong.width(value, type));
      }
    }
    names = Math.min(names, wide / 3);
    double room = wide - names - shown - 2 * GAP;
    double perUnit = chart.highest() > 0 ? room / chart.highest() : 0;
    for (int c = 0; c < chart.categories().size(); c++) {
      double at = y + c * step;
      double bar = step * 0.84 / chart.series().size();
      g.setColor(ink);
      plain.draw(
          g,
          plain.fitted(chart.categories().get(c), type, names),
          x,
          at + step * 0.42 + type * 0.33,
          type);
      for (int s = 0; s < chart.series().size(); s++) {
        Chart.Series series = chart.series().get(s);
        double length = Math.max(2, series.values().get(c).doubleValue() * perUnit);
        swatch(x + names + GAP, at + s * bar, length, bar * 0.86, s);
        g.setColor(ink);
        double small = Math.min(type, bar * 0.86);
        strong.draw(
            g,
            series.shown().get(c),
            x + names + 2 * GAP + length,
            at + s * bar + bar * 0.43 + small * 0.33,
            small);
      }
    }
  }

  private void steps(double x, double y, double wide, double high) throws IOException {
    List<LocalDate> days = chart.categories().stream().map(LocalDate::parse).toList();
    if (days.isEmpty() || chart.highest() <= 0) {
      return;
    }
    double first = days.get(0).toEpochDay();
    double span = Math.max(1, days.get(days.size() - 1).toEpochDay() - first);
    double room = wide - 220;
    double foot = y + high - 60;
    double perUnit = (foot - y - 30) / chart.highest();
    g.setColor(soft);
    g.fill(new Rectangle2D.Double(x, foot, room, 2));
    for (int s = 0; s < chart.series().size(); s++) {
      Chart.Series series = chart.series().get(s);
      Path2D line = new Path2D.Double();
      double last = foot;
      line.moveTo(x, foot - series.values().get(0).doubleValue() * perUnit);
      for (int i = 0; i < days.size(); i++) {
        double at = x + (days.get(i).toEpochDay() - first) / span * room;
        line.lineTo(at, i == 0 ? foot - series.values().get(0).doubleValue() * perUnit : last);
        last = foot - series.values().get(i).doubleValue() * perUnit;
        line.lineTo(at, last);
      }
      g.setColor(s == 0 ? accent : soft);
      g.setStroke(
          s == 0
              ? new BasicStroke(6, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER)
              : new BasicStroke(
                  4, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {14, 10}, 0));
      g.draw(line);
      g.setColor(ink);
      String shown = series.shown().get(days.size() - 1);
      strong.draw(g, shown, x + room + GAP, last + TYPE * 0.33, TYPE);
    }
    g.setColor(soft);
    plain.draw(g, wording.shortDate(days.get(0)), x, foot + 44, TYPE);
    String end = wording.shortDate(days.get(days.size() - 1));
    plain.draw(g, end, x + room - plain.width(end, TYPE), foot + 44, TYPE);
  }
}
