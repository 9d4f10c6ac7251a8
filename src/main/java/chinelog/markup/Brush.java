package chinelog.markup;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Writes shapes of a drawing: y down, as SVG has it. */
final class Brush {

  private final Theme theme;
  private final HtmlWriter svg = new HtmlWriter();

  /**
   * How a line or a surface looks.
   *
   * @param name of its class
   * @param fill a value of the theme, such as {@code accent}; {@code none} for no surface
   * @param stroke the same for its edge
   * @param width of the edge
   * @param dashes null for an unbroken one
   */
  record Look(String name, String fill, String stroke, double width, @Nullable String dashes) {}

  Brush(Theme theme) {
    this.theme = theme;
  }

  /** The typeface of the lettering, as an attribute has it. */
  String sans() {
    return theme.value("sans").replace('"', '\'');
  }

  String drawn() {
    return svg.toString();
  }

  void path(String d, Look look) {
    svg.empty(
        "path",
        "d",
        d,
        "class",
        look.name,
        "fill",
        colour(look.fill),
        "stroke",
        colour(look.stroke),
        "stroke-width",
        look.stroke.equals("none") ? null : ChartSvg.number(look.width),
        "stroke-dasharray",
        look.dashes,
        "stroke-linejoin",
        look.stroke.equals("none") ? null : "round");
  }

  void rect(double x, double y, double width, double height, Look look) {
    svg.empty(
        "rect",
        "x",
        ChartSvg.number(x),
        "y",
        ChartSvg.number(y),
        "width",
        ChartSvg.number(width),
        "height",
        ChartSvg.number(height),
        "class",
        look.name,
        "fill",
        colour(look.fill),
        "stroke",
        colour(look.stroke));
  }

  void disc(double x, double y, double radius, Look look) {
    svg.empty(
        "circle",
        "cx",
        ChartSvg.number(x),
        "cy",
        ChartSvg.number(y),
        "r",
        ChartSvg.number(radius),
        "class",
        look.name,
        "fill",
        colour(look.fill),
        "stroke",
        colour(look.stroke),
        "stroke-width",
        look.stroke.equals("none") ? null : ChartSvg.number(look.width));
  }

  /**
   * @param anchor {@code start}, {@code middle} or {@code end}
   */
  void text(double x, double y, String text, String anchor, boolean quiet) {
    svg.element(
        "text",
        text,
        "x",
        ChartSvg.number(x),
        "y",
        ChartSvg.number(y),
        "text-anchor",
        anchor,
        "class",
        quiet ? "label soft" : "label",
        "fill",
        theme.value(quiet ? "soft" : "ink"));
  }

  /** A value of the theme; {@code tint} and {@code wash} lie between accent and paper. */
  private String colour(String name) {
    return switch (name) {
      case "none" -> "none";
      case "tint" -> mixed(theme.value("accent"), theme.value("paper"), 0.55);
      case "wash" -> mixed(theme.value("accent"), theme.value("paper"), 0.25);
      default -> theme.value(name);
    };
  }

  private static String mixed(String a, String b, double share) {
    if (!a.matches("#[0-9a-fA-F]{6}") || !b.matches("#[0-9a-fA-F]{6}")) {
      return a;
    }
    StringBuilder mixed = new StringBuilder("#");
    for (int i = 1; i < 7; i += 2) {
      int first = Integer.parseInt(a.substring(i, i + 2), 16);
      int second = Integer.parseInt(b.substring(i, i + 2), 16);
      mixed.append(
          String.format(Locale.ROOT, "%02x", Math.round(second + share * (first - second))));
    }
    return mixed.toString();
  }
}
