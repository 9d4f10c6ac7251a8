package chinelog.reckon.trade;

import chinelog.drawn.LineUse;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;

/**
 * The lines of a hull as a table of offsets tells them, drawn small enough for one sheet: profile,
 * half-breadths, body plan (after stations to the left, fore ones to the right) and beneath them
 * the curve of the stations' areas.
 */
final class LinesPlan {

  /** How long the hull may come out, in m. */
  private static final double ROOM = 0.17;

  /** Scales of reduction (ISO 5455). */
  private static final double[] SCALES = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000};

  private static final double GAP = 0.008;
  private static final double SMALL = PartDrawing.SMALL;

  private final Offsets offsets;
  private final List<HullSection> stations;
  private final double scale;
  private final double aft;
  private final double length;
  private final double high;
  private final double wide;
  private final PartDrawing drawing;

  private LinesPlan(Offsets offsets) {
    this.offsets = offsets;
    this.stations = offsets.stations();
    this.aft = stations.get(0).x();
    this.length = stations.get(stations.size() - 1).x() - aft;
    this.scale = scale(length);
    this.high = stations.stream().mapToDouble(HullSection::top).max().orElseThrow();
    this.wide = stations.stream().mapToDouble(LinesPlan::breadth).max().orElseThrow();
    this.drawing = new PartDrawing("lines", title());
  }

  private static double scale(double length) {
    for (double scale : SCALES) {
      if (length / scale <= ROOM) {
        return scale;
      }
    }
    return SCALES[SCALES.length - 1];
  }

  private static double breadth(HullSection station) {
    double widest = 0;
    for (double half : station.y()) {
      widest = Math.max(widest, half);
    }
    return widest;
  }

  static Part draw(Offsets offsets, double draught) {
    LinesPlan plan = new LinesPlan(offsets);
    double y = -plan.high / plan.scale;
    plan.profile(y, draught);
    y -= plan.wide / plan.scale + GAP;
    plan.halfBreadths(y);
    y -= plan.high / plan.bodyScale() + GAP;
    plan.body(y, draught);
    y -= 0.03 + GAP;
    plan.areas(y, draught);
    plan.drawing.write(plan.title(), 0, 0.004, SMALL);
    return plan.drawing.part();
  }

  private Message title() {
    return Message.of("pattern.lines", "1:" + Math.round(scale), "1:" + Math.round(bodyScale()));
  }

  private double x(double along) {
    return (along - aft) / scale;
  }

  private void profile(double base, double draught) {
    for (double z : offsets.waterlines().keySet()) {
      line(0, base + z / scale, length / scale, base + z / scale);
    }
    level(base + draught / scale, length / scale);
    for (HullSection s : stations) {
      line(x(s.x()), base + s.keel() / scale, x(s.x()), base + s.top() / scale);
      drawing.write(s.name(), x(s.x()) + 0.0005, base - SMALL - 0.002, SMALL);
    }
    curve(stations, p -> new double[] {x(p[0]), base + p[1] / scale}, HullSection::keel);
    curve(stations, p -> new double[] {x(p[0]), base + p[1] / scale}, HullSection::top);
  }

  private void halfBreadths(double base) {
    drawing.line(LineUse.CENTRE, 0, base, length / scale, base);
    for (HullSection s : stations) {
      line(x(s.x()), base, x(s.x()), base + breadth(s) / scale);
    }
    UnaryOperator<double[]> place = p -> new double[] {x(p[0]), base + p[1] / scale};
    for (double z : offsets.waterlines().keySet()) {
      List<HullSection> there =
          stations.stream().filter(s -> s.keel() <= z && s.top() >= z).toList();
      curve(there, place, s -> s.half(z));
    }
    curve(stations, place, s -> s.y()[s.y().length - 1]);
  }

  /** The least at which the body plan is not too wide. */
  private double bodyScale() {
    for (double scale : SCALES) {
      if (2 * wide / scale <= 0.12) {
        return scale;
      }
    }
    return SCALES[SCALES.length - 1];
  }

  private void body(double base, double draught) {
    double scale = bodyScale();
    double middle = length / this.scale / 2;
    int fullest = 0;
    for (int i = 1; i < stations.size(); i++) {
      fullest = breadth(stations.get(i)) > breadth(stations.get(fullest)) ? i : fullest;
    }
    drawing.line(LineUse.CENTRE, middle, base, middle, base + high / scale);
    for (double z : offsets.waterlines().keySet()) {
      line(middle - wide / scale, base + z / scale, middle + wide / scale, base + z / scale);
    }
    drawing.line(
        LineUse.CENTRE,
        middle - wide / scale,
        base + draught / scale,
        middle + wide / scale,
        base + draught / scale);
    for (int i = 0; i < stations.size(); i++) {
      double side = i < fullest ? -1 : 1;
      List<double[]> points = new ArrayList<>();
      for (double[] p : MouldSide.skin(stations.get(i))) {
        points.add(new double[] {middle + side * p[0] / scale, base + p[1] / scale});
      }
      drawing.curve(LineUse.SCORE, points);
    }
  }

  private void areas(double base, double draught) {
    List<HullSection> wet = stations.stream().filter(s -> s.keel() < draught).toList();
    double most = wet.stream().mapToDouble(s -> s.area(Math.min(draught, s.top()))).max().orElse(0);
    line(0, base, length / scale, base);
    drawing.write(Message.of("pattern.areas"), 0, base - SMALL - 0.002, SMALL);
    if (most > 0) {
      curve(
          wet,
          p -> new double[] {x(p[0]), base + 0.03 * p[1] / most},
          s -> s.area(Math.min(draught, s.top())));
    }
  }

  /** A fair curve through one ordinate of each station. */
  private void curve(
      List<HullSection> along,
      UnaryOperator<double[]> place,
      ToDoubleFunction<HullSection> ordinate) {
    if (along.size() > 1) {
      drawing.curve(LineUse.SCORE, Profile.curve(along, ordinate, place));
    }
  }

  private void level(double y, double to) {
    drawing.line(LineUse.CENTRE, 0, y, to, y);
  }

  private void line(double x0, double y0, double x1, double y1) {
    drawing.line(LineUse.SCORE, x0, y0, x1, y1);
  }
}
