package chinelog.reckon.trade;

import chinelog.drawn.Anchor;
import chinelog.drawn.Ink;
import chinelog.quantity.Quantity;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.util.ArrayList;
import java.util.List;

/**
 * The sails over the underwater profile, with the centre of effort, the centre of lateral
 * resistance and the lead between them. A sail whose corners are not given is a circle of its area.
 */
final class SailPlanSketch {

  private static final double LEFT = 10;
  private static final double WIDE = Sketch.WIDTH - 20;
  private static final double HIGH = 340;

  private final List<Cloth> sails;
  private final List<double[]> profile;
  private final double ce;
  private final double ceUp;
  private final double clr;
  private final ShopUnits units;
  private final SketchPad pad = new SketchPad();
  private double from = Double.MAX_VALUE;
  private double to = -Double.MAX_VALUE;
  private double low = Double.MAX_VALUE;
  private double high = -Double.MAX_VALUE;

  /**
   * A sail.
   *
   * @param corners in m; empty if they are not given
   */
  record Cloth(Phrase name, double area, double x, double z, List<double[]> corners) {
    double radius() {
      return Math.sqrt(area / Math.PI);
    }
  }

  /**
   * @param profile corners of the underwater profile; empty if it is not given
   * @param clr centre of lateral resistance from the aft end; not a number if it is not known
   */
  SailPlanSketch(List<Cloth> sails, List<double[]> profile, double clr, ShopUnits units) {
    this.sails = sails;
    this.profile = profile;
    double whole = 0;
    double along = 0;
    double up = 0;
    for (Cloth sail : sails) {
      whole += sail.area();
      along += sail.area() * sail.x();
      up += sail.area() * sail.z();
    }
    this.ce = along / whole;
    this.ceUp = up / whole;
    this.clr = clr;
    this.units = units;
  }

  private void reach(double x, double z) {
    from = Math.min(from, x);
    to = Math.max(to, x);
    low = Math.min(low, z);
    high = Math.max(high, z);
  }

  Sketch draw() throws TradeException {
    profile.forEach(p -> reach(p[0], p[1]));
    for (Cloth sail : sails) {
      sail.corners().forEach(p -> reach(p[0], p[1]));
      if (sail.corners().isEmpty()) {
        reach(sail.x() - sail.radius(), sail.z() - sail.radius());
        reach(sail.x() + sail.radius(), sail.z() + sail.radius());
      }
    }
    if (!Double.isNaN(clr)) {
      reach(clr, low);
    }
    double scale = Math.min(WIDE / (to - from), HIGH / Math.max(high - low, 1e-9));
    double left = LEFT + (WIDE - (to - from) * scale) / 2;
    double base = -(high - low) * scale - 6;
    shapes(left, base, scale);
    double bottom = lead(left, base, scale);
    pad.keyed()
        .head(
            Message.of("sketch.sail"),
            Message.of("sketch.area"),
            Message.of("sketch.from.aft"),
            Message.of("sketch.above.base"));
    for (Cloth sail : sails) {
      pad.row(sail.name(), units.area(sail.area()), told(sail.x()), told(sail.z()));
    }
    return pad.sketch(
        "sails",
        Message.of("sketch.sails"),
        Message.of("sketch.sails.about", told(ce), told(ceUp)),
        bottom,
        0);
  }

  private Quantity told(double metres) throws TradeException {
    return units.length(SketchPad.asTold(metres));
  }

  private void shapes(double left, double base, double scale) {
    if (!profile.isEmpty()) {
      pad.surface(Ink.HULL, placed(profile, left, base, scale));
    }
    for (Cloth sail : sails) {
      if (sail.corners().isEmpty()) {
        pad.disc(
            Ink.SAIL,
            left + (sail.x() - from) * scale,
            base + (sail.z() - low) * scale,
            sail.radius() * scale);
      } else {
        pad.surface(Ink.SAIL, placed(sail.corners(), left, base, scale));
      }
    }
    for (Cloth sail : sails) {
      double x = left + (SketchPad.asTold(sail.x()) - from) * scale;
      double y = base + (SketchPad.asTold(sail.z()) - low) * scale;
      pad.disc(Ink.WEIGHT, x, y, 2);
      pad.aside(sail.name(), x, y + 6, Anchor.MIDDLE);
    }
  }

  private List<double[]> placed(List<double[]> corners, double left, double base, double scale) {
    List<double[]> placed = new ArrayList<>();
    corners.forEach(
        p -> placed.add(new double[] {left + (p[0] - from) * scale, base + (p[1] - low) * scale}));
    return placed;
  }

  /** The centres, plumb lines from them and the lead between; tells where the drawing ends. */
  private double lead(double left, double base, double scale) throws TradeException {
    double x = left + (SketchPad.asTold(ce) - from) * scale;
    double y = base + (SketchPad.asTold(ceUp) - low) * scale;
    double foot = base - 14;
    pad.line(Ink.CENTRE, x, y, x, foot - 6);
    pad.disc(Ink.CENTROID, x, y, 3.4);
    pad.write(Message.of("sketch.ce"), x + 7, y - 5, Anchor.START);
    if (Double.isNaN(clr)) {
      return foot - 10;
    }
    double other = left + (SketchPad.asTold(clr) - from) * scale;
    double middle = profile.isEmpty() ? base : base + depth(scale);
    pad.line(Ink.CENTRE, other, middle, other, foot - 6);
    pad.disc(Ink.CENTROID, other, middle, 3.4);
    pad.write(
        Message.of("sketch.clr"),
        other + (other < x ? -7 : 7),
        middle - 5,
        other < x ? Anchor.END : Anchor.START);
    pad.line(Ink.CURVE, other, foot, x, foot);
    pad.write(
        Message.of("sketch.lead", told(ce - clr)),
        Math.min(Math.max((x + other) / 2, 60), Sketch.WIDTH - 60.0),
        foot - 22,
        Anchor.MIDDLE);
    return foot - 28;
  }

  /** Half the depth of the profile. */
  private double depth(double scale) {
    double top = profile.stream().mapToDouble(p -> p[1]).max().orElse(low);
    double bottom = profile.stream().mapToDouble(p -> p[1]).min().orElse(low);
    return ((top + bottom) / 2 - low) * scale;
  }
}
