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
    Bands bands = Bands.inside(h, d);
    bands.row(0, 0, 2, 1, 3 * d[0]);
    bands.row(n - 1, 1, 2, 0, 3 * d[n - 2]);
    return bands.solved();
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
    Bands bands = Bands.inside(h, d);
    bands.row(0, 0, h[1], h[0] + h[1], endOfSpline(h[0], h[1], d[0], d[1]));
    double last = endOfSpline(h[n - 2], h[n - 3], d[n - 2], d[n - 3]);
    bands.row(n - 1, h[n - 2] + h[n - 3], h[n - 3], 0, last);
    return bands.solved();
  }

  /** The equations for the slopes, a row for each point with at most three of them. */
  private record Bands(double[] below, double[] on, double[] above, double[] right) {

    /** The same curvature on both sides of every inner point. */
    static Bands inside(double[] h, double[] d) {
      int n = h.length + 1;
      Bands bands = new Bands(new double[n], new double[n], new double[n], new double[n]);
      for (int i = 1; i < h.length; i++) {
        double right = 3 * (h[i] * d[i - 1] + h[i - 1] * d[i]);
        bands.row(i, h[i], 2 * (h[i - 1] + h[i]), h[i - 1], right);
      }
      return bands;
    }

    void row(int i, double before, double own, double next, double sum) {
      below[i] = before;
      on[i] = own;
      above[i] = next;
      right[i] = sum;
    }

    /** Gauss's elimination for three bands (Thomas). */
    double[] solved() {
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
