package chinelog.reckon.trade;

import chinelog.wording.Message;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * Integrals as sums that a reader can add up: each ordinate times its multiplier, as in Simpson's
 * rule; or, where a curve has none, the share of each interval. Lengths are told in the unit whose
 * square and cube areas and volumes are.
 */
final class Sums {

  private final ShopUnits units;

  Sums(ShopUnits units) {
    this.units = units;
  }

  /** What ordinates are weighed by along a curve, and the power of a length that its sum has. */
  private record Weight(DoubleUnaryOperator of, int power) {}

  /**
   * {@code prefix (m y + m y + …)}, the area under the curve.
   *
   * @param power of a length that an ordinate is: 1 for a half-breadth, 2 for a station's area
   */
  Message area(String prefix, FairCurve curve, double[] y, int power) throws TradeException {
    return terms(prefix, curve, new Weight(at -> 1, 1), y, power).end(")");
  }

  /** The same of ordinates times their distances, over a divisor. */
  Message centre(String prefix, FairCurve curve, double[] y, int power, Object divisor)
      throws TradeException {
    return terms(prefix, curve, new Weight(at -> at, 2), y, power).end(") ÷ ", divisor);
  }

  /** The area under the curve over a divisor. */
  Message mean(String prefix, FairCurve curve, double[] y, int power, Object divisor)
      throws TradeException {
    return terms(prefix, curve, new Weight(at -> 1, 1), y, power).end(") ÷ ", divisor);
  }

  /** The second moment about a place. */
  Message second(String prefix, FairCurve curve, double centre, double[] y, int power)
      throws TradeException {
    Weight square = new Weight(at -> (at - centre) * (at - centre), 3);
    return terms(prefix, curve, square, y, power).end(")");
  }

  /** The area under an outline from one height to another. */
  Message between(String prefix, Outline curve, double from, double to, double[] y)
      throws TradeException {
    return (curve.hasMultipliers()
            ? terms(prefix, curve.multipliers(from, to, at -> 1), 1, y, 1)
            : shares(prefix, curve.pieces(from, to, (at, half) -> half), 2))
        .end(")");
  }

  /** {@code prefix (a + b + …)}. */
  Message of(String prefix, double[] shares, int power) throws TradeException {
    return shares(prefix, shares, power).end(")");
  }

  private Terms terms(String prefix, FairCurve curve, Weight weight, double[] y, int power)
      throws TradeException {
    return curve.hasMultipliers()
        ? terms(prefix, curve.multipliers(weight.of), weight.power, y, power)
        : shares(
            prefix,
            curve.pieces((at, half) -> weight.of.applyAsDouble(at) * half),
            weight.power + power);
  }

  private Terms terms(String prefix, double[] multipliers, int power, double[] y, int yPower)
      throws TradeException {
    Terms terms = new Terms(prefix, "(");
    double largest = Arrays.stream(multipliers).map(Math::abs).max().orElse(0);
    for (int i = 0; i < y.length; i++) {
      if (Math.abs(multipliers[i]) > 1e-12 * largest && y[i] != 0) {
        terms.add(units.power(multipliers[i], power), " × ", units.power(y[i], yPower));
      }
    }
    return terms.isEmpty() ? terms.add("0") : terms;
  }

  private Terms shares(String prefix, double[] shares, int power) throws TradeException {
    Terms terms = new Terms(prefix, "(");
    for (double share : shares) {
      if (share != 0) {
        terms.add(units.power(share, power));
      }
    }
    return terms.isEmpty() ? terms.add("0") : terms;
  }
}
