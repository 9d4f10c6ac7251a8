package chinelog.reckon.trade;

import chinelog.drawn.Anchor;
import chinelog.drawn.Ink;
import chinelog.quantity.Quantity;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;

/**
 * The hull in profile as she floats, each mass as a circle of its size at its place, the centre of
 * gravity over that of buoyancy, and the curve of righting arms (GZ curve).
 */
final class BalanceSketch {

  private static final double LEFT = 8;
  private static final double RIGHT = Sketch.WIDTH - 8;
  private static final double LARGEST = 15;
  private static final double NUMBER = 17;
  private static final double ARMS = 120;
  private static final double ARMS_LEFT = 52;

  private final Offsets offsets;
  private final ShopUnits units;
  private final List<Item> items;
  private final double[] gravity;
  private final double[] buoyancy;
  private final double[] draughts;
  private final double from;
  private final double scale;
  private final double heaviest;
  private final SketchPad pad = new SketchPad();

  /** What is aboard: kg and m. */
  record Item(String name, Quantity mass, double kg, double x, double z) {}

  /** An arm in m at a heel in degrees. */
  record Arm(double heel, double arm) {}

  private BalanceSketch(
      Offsets offsets, List<Item> items, double[] gravity, double[] buoyancy, double[] draughts) {
    this.offsets = offsets;
    this.units = offsets.units();
    this.items = items;
    this.gravity = gravity;
    this.buoyancy = buoyancy;
    this.draughts = draughts;
    double[] x = offsets.stationX();
    double aft = items.stream().mapToDouble(Item::x).min().orElse(x[0]);
    double fore = items.stream().mapToDouble(Item::x).max().orElse(x[0]);
    this.from = Math.min(aft, x[0]);
    this.heaviest = items.stream().mapToDouble(Item::kg).max().orElse(1);
    this.scale = (RIGHT - LEFT) / (Math.max(fore, x[x.length - 1]) - from);
  }

  /**
   * @param gravity centre of all masses, {@code {x, z}}
   * @param buoyancy centre of what is under water, {@code {x, z}}
   * @param draughts at the first and the last station
   * @param arms from upright on; none where she was not heeled
   */
  static Sketch draw(
      Offsets offsets,
      List<Item> items,
      double[] gravity,
      double[] buoyancy,
      double[] draughts,
      List<Arm> arms)
      throws TradeException {
    BalanceSketch sketch = new BalanceSketch(offsets, items, gravity, buoyancy, draughts);
    return sketch.draw(arms);
  }

  private double x(double along) {
    return LEFT + (SketchPad.asTold(along) - from) * scale;
  }

  private static double z(double base, double scale, double up) {
    return base + SketchPad.asTold(up) * scale;
  }

  private Sketch draw(List<Arm> arms) throws TradeException {
    double high = offsets.stations().stream().mapToDouble(HullSection::top).max().orElseThrow();
    high =
        Math.max(high, items.stream().mapToDouble(i -> i.z() + radius(i) / scale).max().orElse(0));
    double keel = Math.min(0, offsets.lowest());
    List<Integer> below = numbered(item -> item.z() < keel);
    double base = -NUMBER - 8 - high * scale;
    hull(base);
    items.forEach(i -> pad.disc(Ink.WEIGHT, x(i.x()), z(base, scale, i.z()), radius(i)));
    point(numbered(item -> item.z() >= keel), base, -12, -16);
    double bottom = Math.min(base + keel * scale, centres(base)) - 10;
    if (!below.isEmpty()) {
      double lowest = items.stream().mapToDouble(i -> i.z() - radius(i) / scale).min().orElse(0);
      bottom = Math.min(bottom, base + lowest * scale) - 8 - SketchPad.LINE;
      point(below, base, bottom, bottom + 11);
      bottom -= 4;
    }
    double trim = draughts[1] - draughts[0];
    bottom -= SketchPad.LINE;
    pad.aside(
        Message.of("sketch.balance.draughts", told(draughts[0]), told(draughts[1]), told(trim)),
        Sketch.WIDTH / 2.0,
        bottom,
        Anchor.MIDDLE);
    if (arms.size() > 2) {
      bottom = righting(arms, bottom - 46);
    }
    table();
    return pad.sketch(
        "balance",
        Message.of("sketch.balance"),
        Message.of(
            "sketch.balance.about",
            told(gravity[0]),
            told(gravity[1]),
            told(buoyancy[0]),
            told(buoyancy[1]),
            told(trim)),
        bottom - 4,
        0);
  }

  private Quantity told(double metres) throws TradeException {
    return units.length(SketchPad.asTold(metres));
  }

  private void hull(double base) {
    UnaryOperator<double[]> place =
        p -> new double[] {LEFT + (p[0] - from) * scale, base + p[1] * scale};
    List<HullSection> stations = offsets.stations();
    pad.surface(
        Ink.HULL,
        Profile.around(
            Profile.curve(stations, HullSection::keel, place),
            Profile.curve(stations, HullSection::top, place)));
    double[] ends = offsets.stationX();
    double slope = (draughts[1] - draughts[0]) / (ends[ends.length - 1] - ends[0]);
    double aft = draughts[0] + slope * (from - ends[0]);
    pad.line(
        Ink.WATER,
        0,
        base + (aft - slope * LEFT / scale) * scale,
        Sketch.WIDTH,
        base + (aft + slope * (Sketch.WIDTH - LEFT) / scale) * scale);
  }

  /** Of the masses that lie there, those for whose numbers there is room in a row, by place. */
  private List<Integer> numbered(Predicate<Item> isThere) {
    return IntStream.range(0, items.size())
        .boxed()
        .filter(i -> isThere.test(items.get(i)))
        .sorted(Comparator.comparingDouble((Integer i) -> -items.get(i).kg()))
        .limit((int) ((RIGHT - LEFT) / NUMBER))
        .sorted(
            Comparator.comparingDouble((Integer i) -> items.get(i).x())
                .thenComparing(i -> -items.get(i).z()))
        .toList();
  }

  /**
   * Numbers in a row, each with a line to its mass.
   *
   * @param row on which the numbers stand
   * @param from the height that the lines run from
   */
  private void point(List<Integer> named, double base, double row, double from) {
    double[] at = spread(named.stream().mapToDouble(i -> x(items.get(i).x())).toArray());
    for (int k = 0; k < at.length; k++) {
      Item item = items.get(named.get(k));
      double[] centre = {x(item.x()), z(base, scale, item.z())};
      double far = Math.hypot(at[k] - centre[0], from - centre[1]);
      double edge = Math.min(1, radius(item) / Math.max(far, 1e-9));
      pad.line(
          Ink.POINTER,
          at[k],
          from,
          centre[0] + (at[k] - centre[0]) * edge,
          centre[1] + (from - centre[1]) * edge);
      pad.write(String.valueOf(named.get(k) + 1), at[k], row, Anchor.MIDDLE);
    }
  }

  /** Of a circle whose area is as the mass. */
  private double radius(Item item) {
    return Math.max(1.2, LARGEST * Math.sqrt(item.kg() / heaviest));
  }

  /** Places in a row, each as near as can be to where it is wanted. */
  private static double[] spread(double[] wanted) {
    double[] at = wanted.clone();
    for (int i = 0; i < at.length; i++) {
      double least = i == 0 ? NUMBER / 2 : at[i - 1] + NUMBER;
      at[i] = Math.max(at[i], least);
    }
    for (int i = at.length - 1; i >= 0; i--) {
      double most = i == at.length - 1 ? Sketch.WIDTH - NUMBER / 2 : at[i + 1] - NUMBER;
      at[i] = Math.min(at[i], most);
    }
    // What was pushed one way goes half of it back, where there is room.
    for (int i = 0; i < at.length; i++) {
      double least = i == 0 ? NUMBER / 2 : at[i - 1] + NUMBER;
      at[i] = Math.max(least, Math.min(at[i], wanted[i] - (at[i] - wanted[i]) / 2));
    }
    for (int i = at.length - 1; i >= 0; i--) {
      double most = i == at.length - 1 ? Sketch.WIDTH - NUMBER / 2 : at[i + 1] - NUMBER;
      at[i] = Math.min(at[i], most);
    }
    return at;
  }

  /** Draws both centres; tells how far down that reaches. */
  private double centres(double base) {
    double gx = x(gravity[0]);
    double bx = x(buoyancy[0]);
    double gz = z(base, scale, gravity[1]);
    double bz = z(base, scale, buoyancy[1]);
    pad.line(Ink.CENTRE, gx, Math.min(gz, bz) - 18, gx, Math.max(gz, bz) + 18);
    pad.disc(Ink.CENTROID, gx, gz, 3.2);
    pad.disc(Ink.CENTROID, bx, bz, 3.2);
    boolean above = gz >= bz;
    name("G", gx, bx, gz + (above ? 1 : -11), base);
    name("B", gx, bx, bz + (above ? -11 : 1), base);
    return Math.min(gz, bz) - 18;
  }

  /** The name of a centre, on whichever side no mass lies. */
  private void name(String letter, double gx, double bx, double y, double base) {
    double right = Math.max(gx, bx) + 8;
    double left = Math.min(gx, bx) - 8;
    boolean isTaken = lies(right + 4, y + 5, base);
    if (isTaken && !lies(left - 4, y + 5, base)) {
      pad.write(letter, left, y, Anchor.END);
    } else {
      pad.write(letter, right, y, Anchor.START);
    }
  }

  private boolean lies(double x, double y, double base) {
    return items.stream()
        .anyMatch(i -> Math.hypot(x(i.x()) - x, z(base, scale, i.z()) - y) < radius(i) + 6);
  }

  /** The GZ curve, drawn from a height down; tells where it ends. */
  private double righting(List<Arm> arms, double top) throws TradeException {
    double most = Math.max(1e-9, arms.stream().mapToDouble(Arm::arm).max().orElse(0));
    double least = Math.min(0, arms.stream().mapToDouble(Arm::arm).min().orElse(0));
    double furthest = arms.get(arms.size() - 1).heel();
    double up = ARMS / (most - least);
    double across = (RIGHT - ARMS_LEFT) / furthest;
    double zero = top - most * up;
    pad.aside(Message.of("sketch.arms"), LEFT, top + 16, Anchor.START);
    for (int heel = 0; heel <= furthest; heel += furthest > 90 ? 60 : 30) {
      double x = ARMS_LEFT + heel * across;
      pad.line(Ink.FINE, x, zero + least * up, x, top);
      boolean isAtEnd = heel > 0 && x > RIGHT - NUMBER;
      pad.aside(
          Phrase.own(heel + "°"),
          isAtEnd ? Sketch.WIDTH : x,
          zero + least * up - 14,
          isAtEnd ? Anchor.END : Anchor.MIDDLE);
    }
    Arm best = arms.stream().max(Comparator.comparingDouble(Arm::arm)).orElseThrow();
    pad.line(Ink.FINE, ARMS_LEFT, zero, RIGHT, zero);
    pad.aside(Phrase.own("0"), ARMS_LEFT - 6, zero - 4.5, Anchor.END);
    double[] heels = arms.stream().mapToDouble(Arm::heel).toArray();
    double[] lengths = arms.stream().mapToDouble(Arm::arm).toArray();
    FairCurve fair = FairCurve.of(FairCurve.Shape.PLAIN, heels, lengths);
    List<double[]> curve = new ArrayList<>();
    for (int i = 0; i <= 120; i++) {
      double heel = furthest * i / 120;
      curve.add(new double[] {ARMS_LEFT + heel * across, zero + fair.at(heel) * up});
    }
    pad.curve(Ink.CURVE, curve);
    double x = ARMS_LEFT + best.heel() * across;
    double y = zero + best.arm() * up;
    pad.line(Ink.FINE, ARMS_LEFT, y, x, y);
    pad.disc(Ink.CENTROID, x, y, 2.4);
    pad.aside(new Phrase.Amount(told(best.arm())), ARMS_LEFT - 6, y - 4.5, Anchor.END);
    return zero + least * up - 18;
  }

  private void table() throws TradeException {
    pad.keyed()
        .head(
            Message.of("sketch.item"),
            Message.of("sketch.mass"),
            Message.of("sketch.from.aft"),
            Message.of("sketch.above.base"));
    for (int i = 0; i < items.size(); i++) {
      Item item = items.get(i);
      String name = item.name().isEmpty() ? "" : "  " + item.name();
      pad.row((i + 1) + name, item.mass(), told(item.x()), told(item.z()));
    }
  }
}
