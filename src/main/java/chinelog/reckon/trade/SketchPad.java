package chinelog.reckon.trade;

import chinelog.drawn.Anchor;
import chinelog.drawn.Ink;
import chinelog.drawn.Spot;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.util.ArrayList;
import java.util.List;

/** Draws a sketch in its own units; shapes are moved up at the end, so that all lie above zero. */
final class SketchPad {

  /** Height of a line of lettering, with the room it needs, on the narrowest of screens. */
  static final double LINE = 15;

  /** Points nearer than this to the line between others add nothing. */
  private static final double STRAIGHT = 0.05;

  /** A tenth of a millimetre. */
  private static final double STEPS_TO_A_METRE = 10_000;

  private final List<Sketch.Shape> shapes = new ArrayList<>();
  private final List<Phrase> head = new ArrayList<>();
  private final List<List<Phrase>> rows = new ArrayList<>();
  private boolean isKeyed;

  SketchPad line(Ink ink, double x0, double y0, double x1, double y1) {
    return add(ink, false, List.of(new double[] {x0, y0}, new double[] {x1, y1}));
  }

  SketchPad curve(Ink ink, List<double[]> along) {
    return add(ink, false, simplified(along));
  }

  SketchPad surface(Ink ink, List<double[]> around) {
    return add(ink, true, simplified(around));
  }

  private static List<double[]> simplified(List<double[]> points) {
    return points.size() < 3 ? points : Polyline.simplified(points, STRAIGHT);
  }

  private SketchPad add(Ink ink, boolean closed, List<double[]> points) {
    if (points.size() > 1) {
      shapes.add(new Sketch.Line(ink, closed, points(points)));
    }
    return this;
  }

  SketchPad strip(int turn, List<double[]> around) {
    shapes.add(new Sketch.Strip(turn, points(around)));
    return this;
  }

  SketchPad disc(Ink ink, double x, double y, double radius) {
    shapes.add(new Sketch.Disc(ink, new Spot(x, y), radius));
    return this;
  }

  SketchPad write(Phrase text, double x, double y, Anchor anchor) {
    shapes.add(new Sketch.Note(text, new Spot(x, y), anchor, false));
    return this;
  }

  SketchPad write(String text, double x, double y, Anchor anchor) {
    return write(Phrase.own(text), x, y, anchor);
  }

  SketchPad aside(Phrase text, double x, double y, Anchor anchor) {
    shapes.add(new Sketch.Note(text, new Spot(x, y), anchor, true));
    return this;
  }

  SketchPad head(Object... cells) {
    head.addAll(Message.of("", cells).arguments());
    return this;
  }

  /** The drawing cannot be read without its table. */
  SketchPad keyed() {
    isKeyed = true;
    return this;
  }

  SketchPad row(Object... cells) {
    rows.add(Message.of("", cells).arguments());
    return this;
  }

  /**
   * What was drawn.
   *
   * @param bottom the lowest place that belongs to it
   * @param top the highest
   */
  Sketch sketch(String name, Message title, Message description, double bottom, double top) {
    return new Sketch(
        name,
        title,
        description,
        top - bottom,
        shapes.stream().map(s -> up(s, -bottom)).toList(),
        head,
        rows,
        isKeyed);
  }

  private static Sketch.Shape up(Sketch.Shape shape, double by) {
    if (shape instanceof Sketch.Line line) {
      return new Sketch.Line(line.ink(), line.closed(), up(line.points(), by));
    }
    if (shape instanceof Sketch.Strip strip) {
      return new Sketch.Strip(strip.turn(), up(strip.points(), by));
    }
    if (shape instanceof Sketch.Disc disc) {
      return new Sketch.Disc(disc.ink(), disc.at().up(by), disc.radius());
    }
    Sketch.Note note = (Sketch.Note) shape;
    return new Sketch.Note(note.text(), note.at().up(by), note.anchor(), note.quiet());
  }

  private static List<Spot> up(List<Spot> points, double by) {
    return points.stream().map(p -> p.up(by)).toList();
  }

  private static List<Spot> points(List<double[]> all) {
    return all.stream().map(p -> new Spot(p[0], p[1])).toList();
  }

  /** A length no more exact than it is told, in m, so that to measure a sketch tells no more. */
  static double asTold(double metres) {
    return Math.round(metres * STEPS_TO_A_METRE) / STEPS_TO_A_METRE;
  }
}
