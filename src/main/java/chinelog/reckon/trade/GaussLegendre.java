package chinelog.reckon.trade;

import java.util.function.DoubleUnaryOperator;

/**
 * Quadrature by Gauss and Legendre at eight points, exact for polynomials up to the fifteenth
 * degree (Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, table 25.4).
 */
final class GaussLegendre {

  private static final double[] POINTS = {
    0.183434642495649805, 0.525532409916328986, 0.796666477413626740, 0.960289856497536232
  };

  private static final double[] WEIGHTS = {
    0.362683783378361983, 0.313706645877887287, 0.222381034453374471, 0.101228536290376259
  };

  private GaussLegendre() {}

  static double over(double from, double to, DoubleUnaryOperator f) {
    double middle = (from + to) / 2;
    double half = (to - from) / 2;
    double sum = 0;
    for (int i = 0; i < POINTS.length; i++) {
      double away = half * POINTS[i];
      sum += WEIGHTS[i] * (f.applyAsDouble(middle - away) + f.applyAsDouble(middle + away));
    }
    return half * sum;
  }
}
