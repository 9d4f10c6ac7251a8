package chinelog.reckon.trade;

import chinelog.problem.Sentence;

/**
 * How a loaded hull lies: draught and trim at which the water bears it, at any heel. Found by
 * Newton's method from the real form; nothing is taken as small.
 */
final class Floating {

  private static final int MOST_STEPS = 60;
  private static final double CLOSE = 1e-10;

  private final Inclined hull;
  private final double volume;
  private final double solid;
  private final double[] solidCentre;
  private final double[] mass;
  private final double length;
  private double depth;
  private double slope;

  /** A lie at which forces balance, the heel being held. */
  record Lie(double heel, double depth, double slope, double arm) {}

  /**
   * @param volume that bears the whole, in m³
   * @param solid of appendages, always under water, with their centre {@code {x, z}}
   * @param mass centre {@code {x, y, z}} of all that is aboard
   * @param depth to begin with
   */
  Floating(
      Inclined hull,
      double volume,
      double solid,
      double[] solidCentre,
      double[] mass,
      double length,
      double depth) {
    this.hull = hull;
    this.volume = volume;
    this.solid = solid;
    this.solidCentre = solidCentre.clone();
    this.mass = mass.clone();
    this.length = length;
    this.depth = depth;
  }

  /** The lie at a heel in rad; begins from the one found before. */
  Lie at(double heel) throws TradeException {
    for (int i = 0; i < MOST_STEPS; i++) {
      double[] off = off(heel, depth, slope);
      if (Math.abs(off[0]) < CLOSE * volume && Math.abs(off[1]) < CLOSE * length) {
        return new Lie(heel, depth, slope, arm(heel));
      }
      double h = 1e-5 * length;
      double[] deeper = off(heel, depth + h, slope);
      double[] steeper = off(heel, depth, slope + h / length);
      double a = (deeper[0] - off[0]) / h;
      double b = (steeper[0] - off[0]) * length / h;
      double c = (deeper[1] - off[1]) / h;
      double d = (steeper[1] - off[1]) * length / h;
      double det = a * d - b * c;
      if (det == 0 || Double.isNaN(det)) {
        break;
      }
      double step = -(off[0] * d - b * off[1]) / det;
      double lean = -(a * off[1] - off[0] * c) / det;
      double most = 0.05 * length;
      double share = Math.min(1, most / Math.max(Math.abs(step), Math.abs(lean) * length));
      depth += share * step;
      slope += share * lean;
      if (Math.abs(step) < 1e-9 * length && Math.abs(lean) < 1e-9) {
        return new Lie(heel, depth, slope, arm(heel));
      }
    }
    throw new TradeException(
        "masses",
        Sentence.of("She finds no lie at a heel of {0}°.", Math.round(Math.toDegrees(heel))),
        "Look at the masses and their x; or leave out greater heels with heel_most.");
  }

  /** How far volume and centre are off what would bear her. */
  private double[] off(double heel, double at, double lean) {
    Inclined.Immersed wet = under(heel, at, lean);
    return new double[] {wet.volume() - volume, wet.x() - mass[0] + lean * above(wet, heel)};
  }

  private double arm(double heel) {
    Inclined.Immersed wet = under(heel, depth, slope);
    return (wet.y() - mass[1]) * Math.cos(heel) + (wet.z() - mass[2]) * Math.sin(heel);
  }

  /** What is under water at a lie: the hull's part and the appendages, with their common centre. */
  Inclined.Immersed under(Lie lie) {
    return under(lie.heel(), lie.depth(), lie.slope());
  }

  private Inclined.Immersed under(double heel, double at, double lean) {
    Inclined.Immersed wet = hull.below(heel, at, lean);
    double whole = wet.volume() + solid;
    return new Inclined.Immersed(
        whole,
        (wet.x() * wet.volume() + solid * solidCentre[0]) / whole,
        wet.y() * wet.volume() / whole,
        (wet.z() * wet.volume() + solid * solidCentre[1]) / whole);
  }

  /** Where the water cuts her at the lie. */
  Inclined.Waterplane waterplane(Lie lie) {
    return hull.waterplane(lie.heel(), lie.depth(), lie.slope());
  }

  /**
   * How far the centre of what is under water lies above that of what is aboard, square to the
   * water.
   */
  double centreAbove(Lie lie) {
    return above(under(lie), lie.heel());
  }

  private double above(Inclined.Immersed wet, double heel) {
    return (wet.z() - mass[2]) * Math.cos(heel) - (wet.y() - mass[1]) * Math.sin(heel);
  }
}
