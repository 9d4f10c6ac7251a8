package chinelog.reckon.trade;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How a hull lies with what is aboard, and her righting arms, from one set of offsets. Lengths in
 * m, angles in rad.
 */
final class Lying {

  private static final int MOST_STEPS = 60;
  private static final int FINE = 48;
  private static final int COARSE = 16;

  /** In rad, and as a part of her length. */
  private static final double CLOSE = 1e-11;

  private final List<HullSection> stations;
  private final Load load;
  private final FairCurve areas;
  private final FairCurve.Shape along;
  private final Floating floating;
  private final Floating.Lie rest;
  private final Inclined.Waterplane plane;
  private final double centreAbove;
  private final double[] arms;
  private final Floating.Lie[] lies;
  private final Floating.Lie upset;

  /**
   * What bears down on her.
   *
   * @param mass in kg
   * @param centre {@code {x, y, z}}; y to the side that goes down
   * @param borne volume that bears all of it, in m³
   * @param solids under water
   * @param siding half-breadth where the keel leaves the water
   */
  record Load(double mass, double[] centre, double borne, Solids solids, double siding) {}

  /**
   * @param heels at which arms are told, rising
   */
  static Lying of(List<HullSection> stations, Load load, double[] heels) throws TradeException {
    return new Lying(stations, load, heels, null, FINE);
  }

  /**
   * The same by other offsets or another curve: in coarser pieces, so that what those lose is part
   * of what the figures may be out.
   *
   * @param shape of the curve of areas along the hull; null for the one that tells them best
   */
  static Lying otherwise(
      List<HullSection> stations, Load load, double[] heels, FairCurve.@Nullable Shape shape)
      throws TradeException {
    return new Lying(stations, load, heels, shape, COARSE);
  }

  private Lying(
      List<HullSection> stations,
      Load load,
      double[] heels,
      FairCurve.@Nullable Shape shape,
      int pieces)
      throws TradeException {
    this.stations = stations;
    this.load = load;
    double depth = upright();
    areas = Afloat.at(stations, depth, load.siding).areas();
    along = shape == null ? areas.shape() : shape;
    floating =
        new Floating(
            new Inclined(stations, along, pieces),
            load.borne,
            load.solids.volume(),
            load.solids.centre(),
            load.centre,
            fore() - aft(),
            depth);
    double heel = load.centre[1] == 0 ? 0 : heel();
    rest = floating.at(heel);
    plane = floating.waterplane(rest);
    centreAbove = floating.centreAbove(rest);
    lies = new Floating.Lie[heels.length];
    arms = new double[heels.length];
    Floating.Lie capsized = rest;
    double before = heel;
    double armBefore = gm();
    for (int i = 0; i < heels.length; i++) {
      lies[i] = floating.at(heels[i]);
      arms[i] = lies[i].arm();
      if (capsized == rest && heels[i] > heel && arms[i] <= 0) {
        capsized = floating.at(balanced(before, armBefore, heels[i], arms[i]));
        floating.at(heels[i]);
      }
      before = heels[i];
      armBefore = arms[i];
    }
    upset = capsized;
  }

  FairCurve.Shape along() {
    return along;
  }

  /** How much she tells along another curve of how far she is out, up to 1. */
  double weight(FairCurve.Shape other) {
    return areas.weight(other);
  }

  Floating.Lie rest() {
    return rest;
  }

  /** What is under water at a lie, with the solids. */
  Inclined.Immersed under(Floating.Lie lie) {
    return floating.under(lie);
  }

  private double aft() {
    return stations.get(0).x();
  }

  private double fore() {
    return stations.get(stations.size() - 1).x();
  }

  double draughtAft() {
    return (rest.depth() + rest.slope() * aft()) / Math.cos(rest.heel());
  }

  double draughtFore() {
    return (rest.depth() + rest.slope() * fore()) / Math.cos(rest.heel());
  }

  double trim() {
    return draughtFore() - draughtAft();
  }

  /** Area of the waterplane in m². */
  double plane() {
    return plane.area();
  }

  /** Its second moment about the fore-and-aft line through its centre, in m⁴. */
  double second() {
    return plane.second();
  }

  /** How far the centre of buoyancy lies above the centre of mass. */
  double centreAbove() {
    return centreAbove;
  }

  double gm() {
    return plane.second() / load.borne + centreAbove;
  }

  double arm(int i) {
    return arms[i];
  }

  Floating.Lie lie(int i) {
    return lies[i];
  }

  /** The heel at which the righting arm comes to nothing; not a number where it does not. */
  double range() {
    return upset == rest ? Double.NaN : upset.heel();
  }

  /** The lie at that heel. */
  Floating.Lie upset() {
    return upset;
  }

  /** The station whose sheer lies lowest above the water. */
  HullSection lowest() {
    HullSection lowest = stations.get(0);
    for (HullSection s : stations) {
      lowest = above(s) < above(lowest) ? s : lowest;
    }
    return lowest;
  }

  double freeboard() {
    return above(lowest());
  }

  private double above(HullSection s) {
    double top = s.top() * Math.cos(rest.heel()) - s.half(s.top()) * Math.sin(rest.heel());
    return top - rest.depth() - rest.slope() * s.x();
  }

  /** The draught upright and on an even keel, from which the true lie is looked for. */
  private double upright() throws TradeException {
    double volume = load.borne - load.solids.volume();
    double low = stations.stream().mapToDouble(HullSection::keel).min().orElseThrow();
    double high = stations.stream().mapToDouble(HullSection::top).min().orElseThrow();
    if (volume <= 0 || Afloat.at(stations, high, load.siding).volume() < volume) {
      throw new TradeException(
          "masses",
          volume <= 0
              ? "The appendages alone displace more than is aboard."
              : "She weighs more than the hull displaces when it is immersed to the deck.",
          "Look at the masses, or give higher waterlines and the sheer in the offsets.");
    }
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      long wet = stations.stream().filter(s -> s.keel() < middle - 1e-9).count();
      if (wet < 3 || Afloat.at(stations, middle, load.siding).volume() < volume) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /** Where she comes to rest when her masses do not balance athwart. */
  private double heel() throws TradeException {
    double low = 0;
    double high = 0;
    double arm = floating.at(0).arm();
    double before = arm;
    do {
      low = high;
      before = arm;
      high += Math.toRadians(5);
      if (high > Math.PI / 2) {
        throw new TradeException(
            "masses", "She does not stand up with these masses.", "Move mass down or inboard.");
      }
      arm = floating.at(high).arm();
    } while (arm < 0);
    return balanced(low, before, high, arm);
  }

  /**
   * The heel at which the arm comes to nothing between two at which it has different signs, by the
   * rule of false position with the end that stays halved (Dowell and Jarratt, BIT 11, 1971: the
   * Illinois method; from memory).
   */
  private double balanced(double from, double armFrom, double to, double armTo)
      throws TradeException {
    double a = from;
    double fa = armFrom;
    double b = to;
    double fb = armTo;
    for (int i = 0; i < MOST_STEPS && Math.abs(b - a) > CLOSE && fb != fa; i++) {
      double c = b - fb * (b - a) / (fb - fa);
      double fc = floating.at(c).arm();
      if (fc * fb < 0) {
        a = b;
        fa = fb;
      } else {
        fa /= 2;
      }
      b = c;
      fb = fc;
      if (Math.abs(fc) < CLOSE * (fore() - aft())) {
        break;
      }
    }
    return b;
  }
}
