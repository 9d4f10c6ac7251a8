package chinelog.reckon.trade;

import chinelog.drawn.LineUse;
import chinelog.drawn.Spot;
import chinelog.drawn.Stroke;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.util.ArrayList;
import java.util.List;

/** Draws a part: takes points {@code {x, y}} in m, and gives them in mm. */
final class PartDrawing {

  /** Lettering that can be read at arm's length, height of capitals in m (ISO 3098 has 3.5 mm). */
  static final double SMALL = 0.0035;

  static final double LARGE = 0.007;

  private static final double MM = 1000;

  /** Points nearer than this to the line between others add nothing, in m. */
  private static final double STRAIGHT = 2e-6;

  private final String name;
  private final Message title;
  private final List<Stroke> strokes = new ArrayList<>();
  private final List<Part.Lettering> letters = new ArrayList<>();

  PartDrawing(String name, Message title) {
    this.name = name;
    this.title = title;
  }

  /** The outline, which closes itself. */
  PartDrawing cut(List<double[]> outline) {
    List<double[]> closed = new ArrayList<>(outline);
    closed.add(outline.get(0));
    List<double[]> simple = Polyline.simplified(closed, STRAIGHT);
    strokes.add(new Stroke(LineUse.CUT, true, points(simple.subList(0, simple.size() - 1))));
    return this;
  }

  PartDrawing line(LineUse line, double x0, double y0, double x1, double y1) {
    strokes.add(
        new Stroke(line, false, points(List.of(new double[] {x0, y0}, new double[] {x1, y1}))));
    return this;
  }

  PartDrawing curve(LineUse line, List<double[]> along) {
    strokes.add(new Stroke(line, false, points(Polyline.simplified(along, STRAIGHT))));
    return this;
  }

  /** A line with a head at its second end. */
  PartDrawing arrow(double x0, double y0, double x1, double y1) {
    double length = Math.hypot(x1 - x0, y1 - y0);
    double ux = (x1 - x0) / length;
    double uy = (y1 - y0) / length;
    double head = Math.min(0.004, length / 3);
    strokes.add(
        new Stroke(
            LineUse.GUIDE,
            false,
            points(
                List.of(
                    new double[] {x0, y0},
                    new double[] {x1, y1},
                    new double[] {x1 - head * (ux - uy / 3), y1 - head * (uy + ux / 3)},
                    new double[] {x1, y1},
                    new double[] {x1 - head * (ux + uy / 3), y1 - head * (uy - ux / 3)}))));
    return this;
  }

  PartDrawing write(Phrase text, double x, double y, double height) {
    letters.add(new Part.Lettering(text, new Spot(x * MM, y * MM), height * MM));
    return this;
  }

  PartDrawing write(String text, double x, double y, double height) {
    return write(new Phrase.Own(text), x, y, height);
  }

  /** Lines of lettering one below another, the first with its top at {@code y}. */
  PartDrawing block(List<? extends Phrase> lines, double x, double y) {
    double at = y;
    for (Phrase line : lines) {
      at -= 1.6 * SMALL;
      write(line, x, at, SMALL);
    }
    return this;
  }

  Part part() {
    return new Part(name, title, strokes, letters);
  }

  private static List<Spot> points(List<double[]> metres) {
    return metres.stream().map(p -> new Spot(p[0] * MM, p[1] * MM)).toList();
  }
}
