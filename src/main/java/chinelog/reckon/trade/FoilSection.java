package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.wording.Message;

/**
 * The symmetric section of the NACA's four-digit family, such as 0012 for a thickness of 12 %.
 *
 * <p>Half-thickness over the chord: 5 τ (0.2969 √ξ − 0.1260 ξ − 0.3516 ξ² + 0.2843 ξ³ − 0.1015 ξ⁴),
 * with ξ from the nose and τ the greatest thickness. Jacobs, Ward and Pinkerton, NACA Report 460
 * (1933), page 4; Abbott and von Doenhoff, Theory of Wing Sections (1959), page 113 (both from
 * memory; the ordinates of 0012 agree).
 */
final class FoilSection {

  static final Message SOURCE = Message.of("foil.source");

  private static final double[] COEFFICIENTS = {-0.1260, -0.3516, 0.2843, -0.1015};
  private static final double NOSE = 0.2969;

  /** Steps in the root of the distance from the nose, in which the outline is smooth. */
  private static final int STEPS = 400;

  private FoilSection() {}

  /** Half-thickness at a share of the chord from the nose, for a thickness of 1. */
  static double half(double share) {
    double sum = 0;
    for (int i = COEFFICIENTS.length - 1; i >= 0; i--) {
      sum = (sum + COEFFICIENTS[i]) * share;
    }
    return 5 * (NOSE * Math.sqrt(share) + sum);
  }

  /** The full thickness at a share of the chord, the figures put in. */
  static Message worked(Quantity thickness, double share) throws TradeException {
    Quantity xi = Si.number(share);
    return YieldList.worked(
        "10 × {0} × ({1} × √{2} − {3} × {2} − {4} × {2}² + {5} × {2}³ − {6} × {2}^4)",
        thickness,
        Si.number(NOSE),
        xi,
        Si.number(-COEFFICIENTS[0]),
        Si.number(-COEFFICIENTS[1]),
        Si.number(COEFFICIENTS[2]),
        Si.number(-COEFFICIENTS[3]));
  }

  /** Area over chord × thickness: 0.6851. */
  static double area() {
    return 2 * integral((x, y) -> y);
  }

  /** Where the area's centre lies, as a share of the chord from the nose: 0.4204. */
  static double centre() {
    return integral((x, y) -> x * y) / integral((x, y) -> y);
  }

  /** Volume of the body of revolution over length × diameter². */
  static double volume() {
    return Math.PI * integral((x, y) -> y * y);
  }

  /** Where the body's centre lies, as a share of its length from the nose. */
  static double bodyCentre() {
    return integral((x, y) -> x * y * y) / integral((x, y) -> y * y);
  }

  /** Length round the outline over the chord. */
  static double round(double thickness) {
    return 2 * along(thickness, y -> 1);
  }

  /** Skin of the body of revolution over length². */
  static double skin(double thickness) {
    return 2 * Math.PI * along(thickness, y -> y);
  }

  private interface Part {
    double of(double x, double y);
  }

  private interface Weight {
    double of(double y);
  }

  /** By Simpson's rule in u = √ξ, dξ = 2u du. */
  private static double integral(Part part) {
    double sum = 0;
    for (int i = 0; i <= STEPS; i++) {
      double u = (double) i / STEPS;
      double x = u * u;
      int weight = i == 0 || i == STEPS ? 1 : i % 2 == 1 ? 4 : 2;
      sum += weight * part.of(x, half(x)) * 2 * u;
    }
    return sum / (3 * STEPS);
  }

  /** By chords of the upper outline. */
  private static double along(double thickness, Weight weight) {
    double sum = 0;
    double x0 = 0;
    double y0 = 0;
    for (int i = 1; i <= STEPS; i++) {
      double x = (double) i * i / ((double) STEPS * STEPS);
      double y = thickness * half(x);
      sum += Math.hypot(x - x0, y - y0) * weight.of((y + y0) / 2);
      x0 = x;
      y0 = y;
    }
    return sum;
  }
}
