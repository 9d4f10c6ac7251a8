package chinelog.reckon.trade;

import java.util.ArrayList;
import java.util.List;

/**
 * A fair curve through points in a plane, as a batten lies that is held at each of them.
 *
 * <p>Both coordinates are cubic splines of the length along the chords, which also goes round a
 * flat bottom, where a half-breadth has no slope up the station. At its ends the slopes lie midway
 * between those of a batten whose ends are free (natural spline) and of one whose end pieces share
 * a cubic with their neighbours (de Boor, A Practical Guide to Splines, revised edition 2001,
 * chapter IV). Where a spline would swing beyond its points, its slope is held back to what keeps
 * it rising and falling with them (Fritsch and Carlson, SIAM J. Numer. Anal. 17, 1980).
 */
record Batten(double[] s, double[][] at, double[][] slope) {

  /**
   * @param y half-breadths
   * @param z heights; no two points are the same
   */
  static Batten through(double[] y, double[] z) {
    double[] s = new double[y.length];
    for (int i = 1; i < s.length; i++) {
      s[i] = s[i - 1] + Math.hypot(y[i] - y[i - 1], z[i] - z[i - 1]);
    }
    return new Batten(s, new double[][] {y, z}, new double[][] {slopes(s, y), slopes(s, z)});
  }

  private static double[] slopes(double[] s, double[] v) {
    double[] slopes = Interpolant.freeSpline(s, v);
    double[] other = Interpolant.spline(s, v);
    for (int i = 0; i < slopes.length; i++) {
      slopes[i] = (slopes[i] + other[i]) / 2;
      for (int k = Math.max(1, i); k <= Math.min(s.length - 1, i + 1); k++) {
        slopes[i] = within((v[k] - v[k - 1]) / (s[k] - s[k - 1]), slopes[i]);
      }
    }
    return slopes;
  }

  private static double within(double chord, double slope) {
    return slope * chord <= 0
        ? 0
        : Math.copySign(Math.min(Math.abs(slope), 3 * Math.abs(chord)), chord);
  }

  /**
   * Points {@code {y, z, ty, tz, k}} along it, near enough to be joined by straight lines: a place,
   * the unit vector along the curve, and how many of the given points it has passed.
   */
  List<double[]> points() {
    List<double[]> points = new ArrayList<>();
    for (int i = 1; i < s.length; i++) {
      int parts =
          (int) Math.max(6, Math.min(120, Math.ceil(Math.sqrt((s[i] - s[i - 1]) * 1000) * 5)));
      for (int k = i == 1 ? 0 : 1; k <= parts; k++) {
        points.add(point(i - 1, (double) k / parts));
      }
    }
    return points;
  }

  private double[] point(int i, double t) {
    double h = s[i + 1] - s[i];
    double[] p = new double[5];
    double t2 = t * t;
    double t3 = t2 * t;
    for (int c = 0; c < 2; c++) {
      double a = at[c][i];
      double b = at[c][i + 1];
      double ma = slope[c][i] * h;
      double mb = slope[c][i + 1] * h;
      p[c] =
          (2 * t3 - 3 * t2 + 1) * a
              + (t3 - 2 * t2 + t) * ma
              + (3 * t2 - 2 * t3) * b
              + (t3 - t2) * mb;
      p[c + 2] = (6 * t2 - 6 * t) * (a - b) + (3 * t2 - 4 * t + 1) * ma + (3 * t2 - 2 * t) * mb;
    }
    double length = Math.hypot(p[2], p[3]);
    if (length < 1e-12 * h) {
      // A slope held back to nothing in both directions: the chord's is the curve's.
      p[2] = at[0][i + 1] - at[0][i];
      p[3] = at[1][i + 1] - at[1][i];
      length = Math.hypot(p[2], p[3]);
    }
    p[2] /= length;
    p[3] /= length;
    p[4] = i + t;
    return p;
  }
}
