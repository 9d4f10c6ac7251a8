package chinelog.reckon.trade;

import chinelog.drawn.Anchor;
import chinelog.drawn.Ink;
import chinelog.quantity.Quantity;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * The lines plan of a hull to look at: profile, half-breadths, body plan (after stations to the
 * left, fore ones to the right) and beneath them the curve of areas.
 */
final class LinesSketch {

  private static final double LEFT = 6;
  private static final double RIGHT = Sketch.WIDTH - 6;
  private static final double WIDEST_BODY = 230;
  private static final double HIGHEST_BODY = 170;
  private static final double AREAS = 64;
  private static final double GAP = 12;

  private final Offsets offsets;
  private final List<HullSection> stations;
  private final double draught;
  private final double aft;
  private final double scale;
  private final double high;
  private final double low;
  private final double wide;
  private final SketchPad pad = new SketchPad();

  private LinesSketch(Offsets offsets, double draught) {
    this.offsets = offsets;
    this.stations = offsets.stations();
    this.draught = draught;
    this.aft = stations.get(0).x();
    this.scale = (RIGHT - LEFT) / (stations.get(stations.size() - 1).x() - aft);
    this.high = stations.stream().mapToDouble(HullSection::top).max().orElseThrow();
    this.low = Math.min(0, offsets.lowest());
    this.wide = stations.stream().mapToDouble(LinesSketch::breadth).max().orElseThrow();
  }

  private static double breadth(HullSection station) {
    double widest = station.flat();
    for (double half : station.y()) {
      widest = Math.max(widest, half);
    }
    return widest;
  }

  static Sketch draw(Offsets offsets, double draught) throws TradeException {
    LinesSketch sketch = new LinesSketch(offsets, draught);
    return sketch.draw();
  }

  private Sketch draw() throws TradeException {
    double y = heading(0, "sketch.profile") - high * scale;
    profile(y);
    y = heading(y + low * scale - SketchPad.LINE - GAP, "sketch.half.breadths") - wide * scale;
    halfBreadths(y);
    y = heading(y - GAP, "sketch.body") - (high - low) * bodyScale() + low * bodyScale();
    body(y);
    y = heading(y + low * bodyScale() - SketchPad.LINE - GAP, "sketch.areas") - AREAS;
    areas(y);
    table();
    return pad.sketch(
        "lines",
        Message.of("sketch.lines"),
        Message.of(
            "sketch.lines.about",
            stations.size(),
            offsets.waterlines().size(),
            offsets.units().length(draught)),
        y - 4,
        0);
  }

  /** Writes what comes next, and tells where it may begin. */
  private double heading(double top, String key) {
    pad.aside(Message.of(key), LEFT, top - 11, Anchor.START);
    return top - SketchPad.LINE - 4;
  }

  private double x(double along) {
    return LEFT + (along - aft) * scale;
  }

  private void profile(double base) {
    for (double z : offsets.waterlines().keySet()) {
      pad.line(Ink.FINE, LEFT, base + z * scale, RIGHT, base + z * scale);
    }
    for (HullSection s : stations) {
      pad.line(Ink.FINE, x(s.x()), base + s.keel() * scale, x(s.x()), base + s.top() * scale);
    }
    stationNames(base + low * scale - 12);
    pad.line(Ink.WATER, LEFT, base + draught * scale, RIGHT, base + draught * scale);
    UnaryOperator<double[]> place = p -> new double[] {x(p[0]), base + p[1] * scale};
    List<double[]> keel = Profile.curve(stations, HullSection::keel, place);
    List<double[]> sheer = Profile.curve(stations, HullSection::top, place);
    pad.surface(Ink.HULL, Profile.around(keel, sheer));
  }

  /** The names of the stations, as far as there is room for them. */
  private void stationNames(double y) {
    double free = -1;
    for (HullSection s : stations) {
      double width = 7.5 * s.name().length();
      if (x(s.x()) - width / 2 >= free) {
        double at = Math.max(width / 2, Math.min(Sketch.WIDTH - width / 2, x(s.x())));
        pad.aside(Phrase.own(s.name()), at, y, Anchor.MIDDLE);
        free = at + width / 2 + 5;
      }
    }
  }

  private void halfBreadths(double base) {
    for (HullSection s : stations) {
      pad.line(Ink.FINE, x(s.x()), base, x(s.x()), base + breadth(s) * scale);
    }
    UnaryOperator<double[]> place = p -> new double[] {x(p[0]), base + p[1] * scale};
    for (double z : offsets.waterlines().keySet()) {
      List<HullSection> there =
          stations.stream().filter(s -> s.keel() <= z && s.top() >= z).toList();
      pad.curve(
          Math.abs(z - draught) < 5e-4 ? Ink.WATER : Ink.FINE,
          Profile.curve(there, s -> s.half(z), place));
    }
    pad.curve(Ink.HULL, Profile.curve(stations, s -> s.y()[s.y().length - 1], place));
    pad.line(Ink.CENTRE, 0, base, Sketch.WIDTH, base);
  }

  private double bodyScale() {
    return Math.min(WIDEST_BODY / (2 * wide), HIGHEST_BODY / (high - low));
  }

  private void body(double base) {
    double body = bodyScale();
    double middle = Sketch.WIDTH / 2.0;
    int fullest = 0;
    for (int i = 1; i < stations.size(); i++) {
      fullest = breadth(stations.get(i)) > breadth(stations.get(fullest)) ? i : fullest;
    }
    double reach = wide * body;
    double free = Double.NEGATIVE_INFINITY;
    for (var waterline : offsets.waterlines().entrySet()) {
      double y = base + waterline.getKey() * body;
      pad.line(Ink.FINE, middle - reach, y, middle + reach, y);
      if (y - free >= SketchPad.LINE) {
        pad.aside(Phrase.own(waterline.getValue()), middle + reach + 6, y - 4.5, Anchor.START);
        free = y;
      }
    }
    pad.line(
        Ink.WATER, middle - reach, base + draught * body, middle + reach, base + draught * body);
    pad.line(Ink.CENTRE, middle, base + low * body - 6, middle, base + high * body + 6);
    for (int i = 0; i < stations.size(); i++) {
      double side = i < fullest ? -1 : 1;
      List<double[]> points = new ArrayList<>();
      for (double[] p : MouldSide.skin(stations.get(i))) {
        points.add(new double[] {middle + side * p[0] * body, base + p[1] * body});
      }
      pad.curve(Ink.HULL, points);
    }
  }

  private void areas(double base) throws TradeException {
    List<HullSection> wet = wet();
    double most = wet.stream().mapToDouble(this::area).max().orElse(0);
    pad.line(Ink.FINE, LEFT, base, RIGHT, base);
    if (most <= 0) {
      return;
    }
    UnaryOperator<double[]> place =
        p -> new double[] {x(p[0]), base + Math.max(0, p[1]) / most * (AREAS - SketchPad.LINE)};
    // The ends of the waterline with it, where the areas come to nothing.
    Afloat afloat = Afloat.at(stations, draught, 0);
    List<double[]> curve = Profile.curve(afloat.areas(), place);
    List<double[]> below = new ArrayList<>(curve);
    below.add(new double[] {curve.get(curve.size() - 1)[0], base});
    below.add(new double[] {curve.get(0)[0], base});
    pad.surface(Ink.AREA, below);
    pad.curve(Ink.CURVE, curve);
    for (HullSection s : wet) {
      double up = place.apply(new double[] {s.x(), area(s)})[1];
      pad.line(Ink.FINE, x(s.x()), base, x(s.x()), up);
      if (area(s) == most) {
        pad.write(new Phrase.Amount(offsets.units().area(most)), x(s.x()), up + 5, Anchor.MIDDLE);
      }
    }
  }

  private List<HullSection> wet() {
    return stations.stream().filter(s -> s.keel() < draught).toList();
  }

  private double area(HullSection station) {
    return station.area(Math.min(draught, station.top()));
  }

  private void table() throws TradeException {
    ShopUnits units = offsets.units();
    pad.head(
        Message.of("sketch.station"),
        Message.of("sketch.from.aft"),
        Message.of("sketch.keel"),
        Message.of("sketch.sheer"),
        Message.of("sketch.breadth"),
        Message.of("sketch.area"));
    for (HullSection s : stations) {
      pad.row(
          s.name(),
          told(units, s.x()),
          told(units, s.keel()),
          told(units, s.top()),
          told(units, breadth(s)),
          s.keel() < draught ? units.area(area(s)) : "");
    }
  }

  private static Quantity told(ShopUnits units, double metres) throws TradeException {
    return units.length(SketchPad.asTold(metres));
  }
}
