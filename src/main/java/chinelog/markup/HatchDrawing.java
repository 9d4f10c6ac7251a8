package chinelog.markup;

import chinelog.edition.Picture;
import java.util.List;
import java.util.Locale;

/** Draws what is laid over the filled parts of a picture: a quiet hatch with one word. */
public final class HatchDrawing {

  /** Units of the drawing to the picture's width. */
  private static final double WIDTH = 1000;

  /** Between the lines, and how thick they are. */
  private static final String DASHES = "2 14";

  private static final double SIZE = 34;

  /** Width of a letter by its size, on the wide side. */
  private static final double LETTER = 0.62;

  /** Of the part's width, what the word may take. */
  private static final double ROOM = 0.86;

  private static final double LEAST_SIZE = 18;

  private HatchDrawing() {}

  /**
   * Writes the drawing, to be laid over the picture.
   *
   * @param isCut whether the picture is cut to its frame; else it stands whole within
   */
  public static void write(HtmlWriter html, Picture picture, String word, boolean isCut) {
    Picture.Rendition largest = picture.largest();
    double height = WIDTH * largest.heightPx() / largest.widthPx();
    html.open(
        "svg",
        "class",
        "hatch",
        "viewBox",
        "0 0 " + plain(WIDTH) + " " + plain(height),
        "preserveAspectRatio",
        isCut ? "xMidYMid slice" : "xMidYMid meet",
        "aria-hidden",
        "true");
    for (Picture.Part part : picture.filled()) {
      part(html, part, height);
    }
    word(html, widest(picture.filled()), height, word);
    html.close("svg");
  }

  /** The part that a word is written in: the one of the largest area. */
  public static Picture.Part widest(List<Picture.Part> parts) {
    Picture.Part found = parts.get(0);
    for (Picture.Part part : parts) {
      found = area(part) > area(found) ? part : found;
    }
    return found;
  }

  private static double area(Picture.Part part) {
    return (part.right() - part.left()) * (part.bottom() - part.top());
  }

  /**
   * The size of a word's letters so that it fits into a part; 0 if they would be too small.
   *
   * @param width of the part
   * @param usual size of the letters
   * @param least size that can be read
   */
  public static double size(String word, double width, double height, double usual, double least) {
    double fitting =
        Math.min(usual, Math.min(height * ROOM, width * ROOM / (word.length() * LETTER)));
    return fitting < least ? 0 : fitting;
  }

  private static void part(HtmlWriter html, Picture.Part part, double pictureHeight) {
    double w = (part.right() - part.left()) * WIDTH;
    double h = (part.bottom() - part.top()) * pictureHeight;
    double reach = Math.hypot(w, h) / 2;
    html.open(
        "svg",
        "x",
        plain(part.left() * WIDTH),
        "y",
        plain(part.top() * pictureHeight),
        "width",
        plain(w),
        "height",
        plain(h));
    html.empty("rect", "width", "100%", "height", "100%");
    // One broad line, dashed: each dash is a line of the hatch.
    html.empty(
        "path",
        "d",
        "M" + plain(-reach) + " 0H" + plain(reach),
        "transform",
        "translate(" + plain(w / 2) + " " + plain(h / 2) + ") rotate(45)",
        "stroke-width",
        plain(2 * reach),
        "stroke-dasharray",
        DASHES);
    html.close("svg");
  }

  private static void word(HtmlWriter html, Picture.Part part, double pictureHeight, String word) {
    double w = (part.right() - part.left()) * WIDTH;
    double h = (part.bottom() - part.top()) * pictureHeight;
    double size = size(word, w, h, SIZE, LEAST_SIZE);
    if (size == 0) {
      return;
    }
    double middle = (part.left() + part.right()) / 2 * WIDTH;
    double level = (part.top() + part.bottom()) / 2 * pictureHeight;
    double length = (word.length() + 1) * LETTER * size;
    // On a ground of its own, so that no line runs through it.
    html.empty(
        "rect",
        "x",
        plain(middle - length / 2),
        "y",
        plain(level - size),
        "width",
        plain(length),
        "height",
        plain(2 * size));
    html.element(
        "text",
        word,
        "x",
        plain(middle),
        "y",
        plain(level + size / 3),
        "font-size",
        plain(size),
        "text-anchor",
        "middle");
  }

  private static String plain(double number) {
    return String.format(Locale.ROOT, "%.1f", number).replaceAll("\\.0$", "");
  }
}
