package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import java.util.Arrays;

/** Triangles from their sides. */
final class Triangle {

  private Triangle() {}

  /**
   * Area by Heron's formula in Kahan's order, √((a+(b+c))(c−(a−b))(c+(a−b))(a+(b−c)))/4 with a ≥ b
   * ≥ c, which keeps its digits for needles (Kahan, Miscalculating Area and Angles of a Needle-like
   * Triangle).
   *
   * @param input the side to name if the three do not close
   */
  static double area(double p, double q, double r, String input) throws TradeException {
    double[] sides = {p, q, r};
    Arrays.sort(sides);
    double a = sides[2];
    double b = sides[1];
    double c = sides[0];
    if (c - (a - b) < 0) {
      throw new TradeException(
          input,
          "These three sides do not close: one is longer than the other two together.",
          Sentence.of("Measure {0} again, and look at its unit.", input));
    }
    return Math.sqrt((a + (b + c)) * (c - (a - b)) * (c + (a - b)) * (a + (b - c))) / 4;
  }

  /** Its area from its sides, the figures put in. */
  static Object[] worked(ShopUnits units, double p, double q, double r) throws TradeException {
    double[] sides = {p, q, r};
    Arrays.sort(sides);
    Quantity a = units.side(sides[2]);
    Quantity b = units.side(sides[1]);
    Quantity c = units.side(sides[0]);
    return new Object[] {
      "√((", a, " + ", b, " + ", c, ") × (", c, " − ", a, " + ", b, ") × (", c, " + ", a, " − ", b,
      ") × (", a, " + ", b, " − ", c, ")) ÷ 4"
    };
  }

  /** The corner {@code {x, z}} at distances from (0, 0) and from (0, up), to the right of both. */
  static double[] corner(double up, double fromBottom, double fromTop) {
    double z = (fromBottom * fromBottom + up * up - fromTop * fromTop) / (2 * up);
    return new double[] {Math.sqrt(Math.max(0, fromBottom * fromBottom - z * z)), z};
  }
}
