package chinelog.reckon.trade;

import java.util.Arrays;

/**
 * Passes through given points: a polynomial, a cubic spline, or a monotone cubic.
 *
 * @param coefficients At each point, for cubics; Newton's divided differences for a polynomial.
 */
record Interpolant(double[] u, double[] v, double[] coefficients, boolean isPolynomial) {

  /**
   * @param u rising, at least one
   * @param monotone whether it may turn at points only
   * @param polynomial whether one polynomial goes through all points, if it need not be monotone
   */
  static Interpolant through(double[] u, double[] v, boolean monotone, boolean polynomial) {
    if (polynomial && !monotone || u.length < 3) {
      return new Interpolant(u, v, differences(u, v), true);
    }
    return new Interpolant(u, v, monotone ? monotone(u, v) : spline(u, v), false);
  }

  double at(double place) {
    return isPolynomial ? polynomialAt(place) : cubicAt(place);
  }

  private double polynomialAt(double place) {
    double value = coefficients[u.length - 1];
    for (int i = u.length - 2; i >= 0; i--) {
      value = value * (place - u[i]) + coefficients[i];
    }
    return value;
  }

  private double cubicAt(double place) {
    int found = Arrays.binarySearch(u, place);
    if (found >= 0) {
      return v[found];
    }
    int i = Math.max(0, Math.min(u.length - 2, -found - 2));
    double h = u[i + 1] - u[i];
    double s = (place - u[i]) / h;
    double r = 1 - s;
    return v[i] * (1 + 2 * s) * r * r
        + v[i + 1] * s * s * (3 - 2 * s)
        + h * coefficients[i] * s * r * r
        - h * coefficients[i + 1] * s * s * r;
  }

  private static double[] differences(double[] u, double[] v) {
    double[] c = v.clone();
    for (int order = 1; order < u.length; order++) {
      for (int i = u.length - 1; i >= order; i--) {
        c[i] = (c[i] - c[i - 1]) / (u[i] - u[i - order]);
      }
    }
    return c;
  }

  /** Slopes of the spline whose ends are free, as a batten's: straight there (natural spline). */
  static double[] freeSpline(double[] u, double[] v) {
    int n = u.length;
    double[] h = new double[n - 1];
    double[] d = new double[n - 1];
    chords(u, v, h, d);
    double[] below = new double[n];
    double[] on = new double[n];
    double[] above = new double[n];
    double[] right = new double[n];
    on[0] = 2;
    above[0] = 1;
    right[0] = 3 * d[0];
    inside(h, d, below, on, above, right);
    on[n - 1] = 2;
    below[n - 1] = 1;
    right[n - 1] = 3 * d[n - 2];
    return solved(below, on, above, right);
  }

  /** Slopes of the spline whose first and last two pieces are one cubic each. */
  static double[] spline(double[] u, double[] v) {
    int n = u.length;
    if (n == 2) {
      double chord = (v[1] - v[0]) / (u[1] - u[0]);
      return new double[] {chord, chord};
    }
    if (n == 3) {
      Parabola p = Parabola.through(u, v, 0, 1, 2);
      return new double[] {p.slope(u[0]), p.slope(u[1]), p.slope(u[2])};
    }
    double[] h = new double[n - 1];
    double[] d = new double[n - 1];
    chords(u, v, h, d);
    double[] below = new double[n];
    double[] on = new double[n];
    double[] above = new double[n];
    double[] right = new double[n];
    on[0] = h[1];
    above[0] = h[0] + h[1];
    right[0] = endOfSpline(h[0], h[1], d[0], d[1]);
    inside(h, d, below, on, above, right);
    on[n - 1] = h[n - 3];
    below[n - 1] = h[n - 2] + h[n - 3];
    right[n - 1] = endOfSpline(h[n - 2], h[n - 3], d[n - 2], d[n - 3]);
    return solved(below, on, above, right);
  }

  /** The same curvature on both sides of every inner point. */
  private static void inside(
      double[] h, double[] d, double[] below, double[] on, double[] above, double[] right) {
    for (int i = 1; i < h.length; i++) {
      below[i] = h[i];
      on[i] = 2 * (h[i - 1] + h[i]);
      above[i] = h[i - 1];
      right[i] = 3 * (h[i] * d[i - 1] + h[i - 1] * d[i]);
    }
  }

  /** Gauss's elimination for three bands (Thomas). */
  private static double[] solved(double[] below, double[] on, double[] above, double[] right) {
    int n = on.length;
    for (int i = 1; i < n; i++) {
      double f = below[i] / on[i - 1];
      on[i] -= f * above[i - 1];
      right[i] -= f * right[i - 1];
    }
    double[] slopes = new double[n];
    slopes[n - 1] = right[n - 1] / on[n - 1];
    for (int i = n - 2; i >= 0; i--) {
      slopes[i] = (right[i] - above[i] * slopes[i + 1]) / on[i];
    }
    return slopes;
  }

  private static double endOfSpline(double h0, double h1, double d0, double d1) {
    return ((h0 + 2 * (h0 + h1)) * h1 * d0 + h0 * h0 * d1) / (h0 + h1);
  }

  /** Slopes by Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984), 300: harmonic means. */
  private static double[] monotone(double[] u, double[] v) {
    int n = u.length;
    double[] h = new double[n - 1];
    double[] d = new double[n - 1];
    chords(u, v, h, d);
    double[] slopes = new double[n];
    for (int i = 1; i < n - 1; i++) {
      if (d[i - 1] * d[i] > 0) {
        double w1 = 2 * h[i] + h[i - 1];
        double w2 = h[i] + 2 * h[i - 1];
        slopes[i] = (w1 + w2) / (w1 / d[i - 1] + w2 / d[i]);
      }
    }
    slopes[0] = monotoneEnd(h[0], h[1], d[0], d[1]);
    slopes[n - 1] = monotoneEnd(h[n - 2], h[n - 3], d[n - 2], d[n - 3]);
    return slopes;
  }

  private static double monotoneEnd(double h0, double h1, double d0, double d1) {
    double slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    if (slope * d0 <= 0) {
      return 0;
    }
    return d0 * d1 <= 0 && Math.abs(slope) > 3 * Math.abs(d0) ? 3 * d0 : slope;
  }

  private static void chords(double[] u, double[] v, double[] h, double[] d) {
    for (int i = 0; i < h.length; i++) {
      h[i] = u[i + 1] - u[i];
      d[i] = (v[i + 1] - v[i]) / h[i];
    }
  }
}
