package chinelog.reckon.trade;

import chinelog.drawn.LineUse;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * A sail laid flat: three or four corners, the roach along the leech, the curve of the luff, seams
 * square to the leech and the edges of the corner patches. Lengths in m, the tack at 0, 0.
 *
 * <p>Roach and luff curve are the curves whose areas Simpson's rules give: a parabola through one
 * ordinate, a cubic through two.
 */
final class SailPattern {

  static final List<Parameter> PARAMETERS =
      List.of(
          Parameter.quantity("luff_round", "how far the luff bows out at its middle", Unit.METRE)
              .or("a straight luff"),
          Parameter.quantity("panel", "width of a panel, its seams square to the leech", Unit.METRE)
              .or("no seams"),
          Parameter.quantity("patch", "how far corner patches reach along the edges", Unit.METRE)
              .or("no patches"));

  private static final int STEPS = 60;

  private SailPattern() {}

  /**
   * @param corners from the tack by the clew (and the peak) to the head of the luff
   */
  static Part draw(Inputs inputs, List<double[]> corners) throws QuantityException {
    double[] tack = corners.get(0);
    double[] clew = corners.get(1);
    double[] peak = corners.get(2);
    double[] throat = corners.get(corners.size() - 1);
    List<double[]> outline = new ArrayList<>();
    outline.add(tack);
    bowed(outline, clew, peak, roach(inputs));
    if (corners.size() > 3) {
      outline.add(throat);
    }
    double round = Si.value(inputs, "luff_round", Unit.METRE, 0);
    if (round != 0) {
      bowed(outline, throat, tack, t -> 4 * round * t * (1 - t));
      outline.remove(outline.size() - 1);
    }
    PartDrawing drawing = new PartDrawing("sail", Message.of("pattern.sail"));
    drawing.cut(outline);
    seams(drawing, outline, clew, peak, Si.value(inputs, "panel", Unit.METRE, 0));
    patches(drawing, corners, Si.value(inputs, "patch", Unit.METRE, 0));
    double middle = (tack[0] + clew[0] + throat[0]) / 3;
    List<Phrase> about = List.of(Message.of("pattern.sail"), Message.of("pattern.sail.about"));
    drawing.block(about, middle, (tack[1] + clew[1] + throat[1]) / 3);
    drawing.arrow(
        clew[0] + 0.3 * (peak[0] - clew[0]) - 0.012,
        clew[1] + 0.3 * (peak[1] - clew[1]),
        clew[0] + 0.4 * (peak[0] - clew[0]) - 0.012,
        clew[1] + 0.4 * (peak[1] - clew[1]));
    return drawing.part();
  }

  private static DoubleUnaryOperator roach(Inputs inputs) throws QuantityException {
    double half = Si.value(inputs, "roach_half", Unit.METRE, 0);
    double lower = Si.value(inputs, "roach_lower", Unit.METRE, 0);
    double upper = Si.value(inputs, "roach_upper", Unit.METRE, 0);
    return t ->
        4 * half * t * (1 - t)
            + 13.5 * t * (1 - t) * (lower * (2.0 / 3 - t) + upper * (t - 1.0 / 3));
  }

  /** From a to b, which are both added, bowed out to the right of the way. */
  private static void bowed(
      List<double[]> outline, double[] a, double[] b, DoubleUnaryOperator out) {
    double length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    for (int i = 0; i <= STEPS; i++) {
      double t = (double) i / STEPS;
      double off = out.applyAsDouble(t) / length;
      outline.add(
          new double[] {
            a[0] + t * (b[0] - a[0]) + off * (b[1] - a[1]),
            a[1] + t * (b[1] - a[1]) - off * (b[0] - a[0])
          });
    }
  }

  private static void seams(
      PartDrawing drawing, List<double[]> outline, double[] clew, double[] peak, double panel) {
    double length = Math.hypot(peak[0] - clew[0], peak[1] - clew[1]);
    for (double at = panel; panel > length / 200 && at < length; at += panel) {
      double x = clew[0] + at / length * (peak[0] - clew[0]);
      double y = clew[1] + at / length * (peak[1] - clew[1]);
      double ux = (peak[1] - clew[1]) / length;
      double uy = -(peak[0] - clew[0]) / length;
      double[] from = {x - ux * 9 * length, y - uy * 9 * length};
      double[] to = {x + ux * 9 * length, y + uy * 9 * length};
      List<double[]> ends = new ArrayList<>();
      for (int i = 0; i < outline.size(); i++) {
        double[] a = outline.get(i);
        double[] b = outline.get((i + 1) % outline.size());
        double[] cross = Polyline.crossing(a, b, from, to);
        if (cross != null) {
          ends.add(Polyline.between(a, b, cross[0]));
        }
      }
      if (ends.size() >= 2) {
        double[] a = ends.get(0);
        double[] b = ends.get(ends.size() - 1);
        drawing.line(LineUse.SCORE, a[0], a[1], b[0], b[1]);
      }
    }
  }

  private static void patches(PartDrawing drawing, List<double[]> corners, double patch) {
    int n = corners.size();
    for (int i = 0; i < n && patch > 0; i++) {
      double[] a = towards(corners.get(i), corners.get((i + n - 1) % n), patch);
      double[] b = towards(corners.get(i), corners.get((i + 1) % n), patch);
      drawing.line(LineUse.SCORE, a[0], a[1], b[0], b[1]);
    }
  }

  private static double[] towards(double[] from, double[] to, double way) {
    return Polyline.between(from, to, way / Math.hypot(to[0] - from[0], to[1] - from[1]));
  }
}
