package chinelog.markup;

import chinelog.edition.Plate;
import java.util.Locale;

/** Draws the numbers of its parts over a plate; the key stands below it. */
public final class PartsDrawing {

  /** Units of the drawing to the picture's width. */
  private static final double WIDTH = 1000;

  private static final String RADIUS = "21";

  /** From the middle of a figure down to its foot. */
  private static final double FOOT = 9;

  private PartsDrawing() {}

  /** Writes the drawing, to be laid over the whole picture. */
  public static void write(HtmlWriter html, Plate plate, Wording wording) {
    double height = WIDTH / plate.picture().shape();
    html.open(
        "svg",
        "class",
        "part-numbers",
        "viewBox",
        "0 0 1000 " + Math.round(height),
        "preserveAspectRatio",
        "xMidYMid meet",
        "aria-hidden",
        "true");
    int number = 0;
    for (Plate.Part part : plate.parts()) {
      number++;
      String x = plain(part.x() * WIDTH);
      double y = part.y() * height;
      html.empty("circle", "cx", x, "cy", plain(y), "r", RADIUS);
      html.element(
          "text",
          wording.number(number),
          "x",
          x,
          "y",
          plain(y + FOOT),
          "font-size",
          "26",
          "text-anchor",
          "middle");
    }
    html.close("svg");
  }

  private static String plain(double number) {
    return String.format(Locale.ROOT, "%.1f", number).replaceAll("\\.0$", "");
  }
}
