package chinelog.markup;

import chinelog.edition.Diagram;
import chinelog.edition.Drawing;
import chinelog.edition.Timeline;
import org.jspecify.annotations.Nullable;

/**
 * Draws a drawing as SVG with real text, a title and a description.
 *
 * <p>Colours are written out, for paper; each shape also has a class, so that the site's style
 * sheet can follow the reader's dark or light screen.
 */
public final class DrawingSvg {

  /** On the narrowest screens; wider ones have smaller lettering by the style sheet. */
  private static final double SCREEN_TEXT = 13;

  private static final double PRINT_TEXT_MM = 2.65;

  private DrawingSvg() {}

  /** The drawing as an element {@code svg} within a page of the site. */
  public static String forScreen(Drawing drawing, Theme theme, Wording wording) {
    return draw(drawing, theme, wording, 0);
  }

  /** The drawing as an element {@code svg} within the book, with the attribute {@code alt}. */
  public static String forPrint(Drawing drawing, Theme theme, Wording wording, double widthMm) {
    return draw(drawing, theme, wording, widthMm);
  }

  /** How high the drawing is at that width. */
  public static double heightMm(Drawing drawing, Theme theme, Wording wording, double widthMm) {
    return draft(drawing, theme, wording, widthMm).height * widthMm / Diagram.WIDTH;
  }

  private record Draft(String svg, double height) {}

  private static Draft draft(Drawing drawing, Theme theme, Wording wording, double widthMm) {
    double text = widthMm > 0 ? PRINT_TEXT_MM * Diagram.WIDTH / widthMm : SCREEN_TEXT;
    Brush brush = new Brush(theme);
    double height;
    if (drawing instanceof Diagram diagram) {
      height = new DiagramDrawing(diagram, brush).draw();
    } else {
      height = new TimelineDrawing((Timeline) drawing, brush, wording, text).draw();
    }
    return new Draft(brush.drawn(), height);
  }

  private static String draw(Drawing drawing, Theme theme, Wording wording, double widthMm) {
    Draft draft = draft(drawing, theme, wording, widthMm);
    boolean isPrint = widthMm > 0;
    String titleId = drawing.id() + "-title";
    String descriptionId = drawing.id() + "-description";
    double text = isPrint ? PRINT_TEXT_MM * Diagram.WIDTH / widthMm : SCREEN_TEXT;
    HtmlWriter whole = new HtmlWriter();
    whole.open(
        "svg",
        "style",
        isPrint ? ChartSvg.size(widthMm, widthMm * draft.height / Diagram.WIDTH) : null,
        "xmlns",
        "http://www.w3.org/2000/svg",
        "class",
        "drawing",
        "data-of",
        of(drawing),
        "role",
        "img",
        "viewBox",
        "0 0 " + Diagram.WIDTH + " " + ChartSvg.number(draft.height),
        "width",
        String.valueOf(Diagram.WIDTH),
        "height",
        ChartSvg.number(draft.height),
        "aria-labelledby",
        titleId + " " + descriptionId,
        "alt",
        isPrint ? drawing.title() + ". " + drawing.description() : null,
        "font-family",
        theme.value("sans").replace('"', '\''),
        "font-size",
        ChartSvg.number(text));
    whole.element("title", drawing.title(), "id", titleId);
    whole.element("desc", drawing.description(), "id", descriptionId);
    whole.raw(draft.svg);
    return whole.close("svg").toString();
  }

  private static @Nullable String of(Drawing drawing) {
    return drawing instanceof Diagram diagram ? diagram.of() : null;
  }
}
