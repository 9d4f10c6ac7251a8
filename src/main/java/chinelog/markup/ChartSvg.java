package chinelog.markup;

import chinelog.edition.Chart;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

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

  private final Chart chart;
  private final Theme theme;
  private final Wording wording;
  private final HtmlWriter svg = new HtmlWriter();

  private ChartSvg(Chart chart, Theme theme, Wording wording) {
    this.chart = chart;
    this.theme = theme;
    this.wording = wording;
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
        widthMm > 0 ? chart.title() + ". " + chart.description() : null,
        "font-family",
        theme.value("sans").replace('"', '\''),
        "font-size",
        String.valueOf(TEXT_SIZE));
    whole.element("title", chart.title(), "id", titleId);
    whole.element("desc", chart.description(), "id", descriptionId);
    whole.raw(svg.toString());
    if (chart.series().size() > 1) {
      legend(whole);
    }
    return whole.close("svg").toString();
  }

  private void legend(HtmlWriter out) {
    double x = 0;
    List<Chart.Series> series = chart.series();
    for (int i = 0; i < series.size(); i++) {
      if (chart.kind() == Chart.Kind.BARS) {
        rect(out, x + 0.5, 5.5, 21, 10, i);
      } else {
        out.empty(
            "path",
            "d",
            "M" + number(x) + " 11h22",
            "class",
            "line line-" + (i + 1),
            "fill",
            "none",
            "stroke",
            lineColour(i),
            "stroke-width",
            lineWidth(i),
            "stroke-dasharray",
            dashes(i));
      }
      String name =
          series.get(i).name() + (chart.unit().isEmpty() ? "" : " (" + chart.unit() + ")");
      out.element(
          "text",
          name,
          "x",
          number(x + 28),
          "y",
          "15",
          "class",
          "label",
          "fill",
          theme.value("ink"));
      x += 28 + 7.6 * name.length() + 24;
    }
  }

  void rect(double x, double y, double width, double height, int index) {
    rect(svg, x, y, width, height, index);
  }

  private static String size(double widthMm, double heightMm) {
    return String.format(Locale.ROOT, "width:%.2fmm;height:%.2fmm", widthMm, heightMm);
  }

  private void rect(HtmlWriter out, double x, double y, double width, double height, int index) {
    out.empty(
        "rect",
        "x",
        number(x),
        "y",
        number(y),
        "width",
        number(width),
        "height",
        number(height),
        "class",
        "bar bar-" + (index + 1),
        "fill",
        barFill(index),
        "stroke",
        barStroke(index));
  }

  void line(String path, int index) {
    svg.empty(
        "path",
        "d",
        path,
        "class",
        "line line-" + (index + 1),
        "fill",
        "none",
        "stroke",
        lineColour(index),
        "stroke-width",
        lineWidth(index),
        "stroke-dasharray",
        dashes(index));
  }

  void grid(double x1, double y1, double x2, double y2) {
    svg.empty(
        "path",
        "d",
        "M" + number(x1) + " " + number(y1) + "L" + number(x2) + " " + number(y2),
        "class",
        "grid",
        "fill",
        "none",
        "stroke",
        theme.value("rule"),
        "stroke-width",
        "1");
  }

  /**
   * @param anchor {@code start}, {@code middle} or {@code end}
   */
  void label(double x, double y, String text, String anchor, boolean quiet) {
    svg.element(
        "text",
        text,
        "x",
        number(x),
        "y",
        number(y),
        "text-anchor",
        anchor,
        "class",
        quiet ? "label soft" : "label",
        "fill",
        theme.value(quiet ? "soft" : "ink"));
  }

  private String barFill(int index) {
    return index == 0 ? theme.value("accent") : theme.value("paper");
  }

  private String barStroke(int index) {
    return theme.value(index == 0 ? "accent" : "soft");
  }

  private String lineColour(int index) {
    return theme.value(index == 0 ? "accent" : "soft");
  }

  private static String lineWidth(int index) {
    return index == 0 ? "2.5" : "1.5";
  }

  private static @Nullable String dashes(int index) {
    return index == 0 ? null : "5 4";
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
