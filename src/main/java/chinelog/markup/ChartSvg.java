package chinelog.markup;

import chinelog.edition.Chart;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Draws a chart as SVG with real text, a title and a description.
 *
 * <p>Series are told apart by more than colour: the first is filled or a full line, the second
 * outlined or a broken line. Colours are written out, for paper; each shape also has a class, so
 * that the site's style sheet can follow the reader's dark or light screen.
 */
public final class ChartSvg {

  /** All lengths are in user units, 400 across. */
  static final int WIDTH = 400;

  static final int TEXT_SIZE = 15;
  private static final int LEGEND_HEIGHT = 30;

  /** Width of a sign by its height, taken together: digits of a sans face are about this wide. */
  private static final double WIDEST_SIGN = 0.58;

  private static final Brush.Look GRID = new Brush.Look("grid", "none", "rule", 1, null);
  private static final List<Brush.Look> BARS =
      List.of(
          new Brush.Look("bar-1", "accent", "accent", 1, null),
          new Brush.Look("bar-2", "paper", "soft", 1, null));
  private static final List<Brush.Look> LINES =
      List.of(
          new Brush.Look("line line-1", "none", "accent", 2.5, null),
          new Brush.Look("line line-2", "none", "soft", 1.5, "5 4"));

  private final Chart chart;
  private final Wording wording;
  private final Brush brush;

  private ChartSvg(Chart chart, Theme theme, Wording wording) {
    this.chart = chart;
    this.wording = wording;
    this.brush = new Brush(theme);
  }

  /** The chart as an element {@code svg} within a page of the site. */
  public static String forScreen(Chart chart, Theme theme, Wording wording) {
    return new ChartSvg(chart, theme, wording).draw(0);
  }

  /** The chart as an element {@code svg} within the book, with the attribute {@code alt}. */
  public static String forPrint(Chart chart, Theme theme, Wording wording, double widthMm) {
    return new ChartSvg(chart, theme, wording).draw(widthMm);
  }

  /**
   * @param widthMm in print; 0 on a screen
   */
  private String draw(double widthMm) {
    int top = chart.series().size() > 1 ? LEGEND_HEIGHT : 4;
    int height =
        switch (chart.kind()) {
          case BARS -> new BarsDrawing(chart, this).draw(top);
          case STEPS -> new StepsDrawing(chart, this, wording).draw(top);
        };
    String titleId = chart.id() + "-title";
    String descriptionId = chart.id() + "-description";
    HtmlWriter whole = new HtmlWriter();
    whole.open(
        "svg",
        "style",
        widthMm > 0 ? size(widthMm, widthMm * height / WIDTH) : null,
        "xmlns",
        "http://www.w3.org/2000/svg",
        "class",
        "chart",
        "role",
        "img",
        "viewBox",
        "0 0 " + WIDTH + " " + height,
        "width",
        String.valueOf(WIDTH),
        "height",
        String.valueOf(height),
        "aria-labelledby",
        titleId + " " + descriptionId,
        "alt",
        widthMm > 0 ? inWords() : null,
        "font-family",
        brush.sans(),
        "font-size",
        String.valueOf(TEXT_SIZE));
    whole.element("title", chart.title(), "id", titleId);
    whole.element("desc", chart.description(), "id", descriptionId);
    if (chart.series().size() > 1) {
      legend();
    }
    whole.raw(brush.drawn());
    return whole.close("svg").toString();
  }

  /** What the chart shows; of bars, with what they are labelled with. */
  private String inWords() {
    StringBuilder words = new StringBuilder(chart.title() + ". " + chart.description());
    for (int i = 0; i < chart.categories().size() && chart.kind() == Chart.Kind.BARS; i++) {
      int place = i;
      words.append(' ').append(chart.categories().get(i)).append(": ");
      words.append(
          chart.series().stream()
              .filter(s -> !s.shown().get(place).isEmpty())
              .map(s -> s.name() + " " + s.shown().get(place))
              .collect(Collectors.joining(", ", "", ".")));
    }
    return words.toString();
  }

  private void legend() {
    double x = 0;
    List<Chart.Series> series = chart.series();
    for (int i = 0; i < series.size(); i++) {
      if (chart.kind() == Chart.Kind.BARS) {
        rect(x + 0.5, 5.5, 21, 10, i);
      } else {
        line("M" + number(x) + " 11h22", i);
      }
      String name =
          series.get(i).name() + (chart.unit().isEmpty() ? "" : " (" + chart.unit() + ")");
      label(x + 28, 15, name, "start", false);
      x += 28 + 7.6 * name.length() + 24;
    }
  }

  static String size(double widthMm, double heightMm) {
    return String.format(Locale.ROOT, "width:%.2fmm;height:%.2fmm", widthMm, heightMm);
  }

  void rect(double x, double y, double width, double height, int index) {
    brush.rect(x, y, width, height, BARS.get(Math.min(index, 1)));
  }

  void line(String path, int index) {
    brush.path(path, LINES.get(Math.min(index, 1)));
  }

  void grid(double x1, double y1, double x2, double y2) {
    String path = "M" + number(x1) + " " + number(y1) + "L" + number(x2) + " " + number(y2);
    brush.path(path, GRID);
  }

  /**
   * @param anchor {@code start}, {@code middle} or {@code end}
   */
  void label(double x, double y, String text, String anchor, boolean quiet) {
    brush.text(x, y, text, anchor, quiet);
  }

  /** The room that the longest of the printed values takes, at the most that its signs can need. */
  static double roomForValues(Chart chart) {
    int longest =
        chart.series().stream()
            .flatMap(s -> s.shown().stream())
            .mapToInt(String::length)
            .max()
            .orElse(0);
    return longest * TEXT_SIZE * WIDEST_SIGN;
  }

  /** A length to a tenth of a unit, such as {@code 12.5}. */
  static String number(double value) {
    String text = String.format(Locale.ROOT, "%.1f", value);
    return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
  }
}
