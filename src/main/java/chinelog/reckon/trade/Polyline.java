package chinelog.reckon.trade;

import java.util.ArrayList;
import java.util.List;

/** What is done with curves that are given as many points {@code {x, y}}, in m. */
final class Polyline {

  private Polyline() {}

  /** Without the points that lie nearer than {@code spare} to the line between those left. */
  static List<double[]> simplified(List<double[]> points, double spare) {
    boolean[] kept = new boolean[points.size()];
    kept[0] = true;
    kept[points.size() - 1] = true;
    List<int[]> open = new ArrayList<>();
    open.add(new int[] {0, points.size() - 1});
    while (!open.isEmpty()) {
      int[] range = open.remove(open.size() - 1);
      int farthest = -1;
      double most = spare;
      for (int i = range[0] + 1; i < range[1]; i++) {
        double off = distance(points.get(i), points.get(range[0]), points.get(range[1]));
        if (off > most) {
          most = off;
          farthest = i;
        }
      }
      if (farthest > 0) {
        kept[farthest] = true;
        open.add(new int[] {range[0], farthest});
        open.add(new int[] {farthest, range[1]});
      }
    }
    List<double[]> left = new ArrayList<>();
    for (int i = 0; i < kept.length; i++) {
      if (kept[i]) {
        left.add(points.get(i));
      }
    }
    return left;
  }

  private static double distance(double[] p, double[] a, double[] b) {
    double dx = b[0] - a[0];
    double dy = b[1] - a[1];
    double length = dx * dx + dy * dy;
    double along = length == 0 ? 0 : ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / length;
    double t = Math.max(0, Math.min(1, along));
    return Math.hypot(a[0] + t * dx - p[0], a[1] + t * dy - p[1]);
  }

  /** Where two stretches cross, as shares of each; null if they do not. */
  static double @org.jspecify.annotations.Nullable [] crossing(
      double[] a, double[] b, double[] c, double[] d) {
    double[] at = meeting(a, b, c, d);
    return at != null && at[0] >= 0 && at[0] <= 1 && at[1] >= 0 && at[1] <= 1 ? at : null;
  }

  /** Where two straight lines through two points each meet; null if they are parallel. */
  static double @org.jspecify.annotations.Nullable [] meeting(
      double[] a, double[] b, double[] c, double[] d) {
    double ux = b[0] - a[0];
    double uy = b[1] - a[1];
    double vx = d[0] - c[0];
    double vy = d[1] - c[1];
    double cross = ux * vy - uy * vx;
    if (Math.abs(cross) <= 1e-12 * Math.hypot(ux, uy) * Math.hypot(vx, vy)) {
      return null;
    }
    double wx = c[0] - a[0];
    double wy = c[1] - a[1];
    return new double[] {(wx * vy - wy * vx) / cross, (wx * uy - wy * ux) / cross};
  }

  static double[] between(double[] a, double[] b, double share) {
    return new double[] {a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])};
  }

  /** Whether two stretches cannot cross, since one lies wholly beside the other. */
  private static boolean areApart(double[] a, double[] b, double[] c, double[] d) {
    return Math.max(a[0], b[0]) < Math.min(c[0], d[0])
        || Math.max(c[0], d[0]) < Math.min(a[0], b[0])
        || Math.max(a[1], b[1]) < Math.min(c[1], d[1])
        || Math.max(c[1], d[1]) < Math.min(a[1], b[1]);
  }

  /** Without the loops that a curve makes where it was moved farther than it could bend. */
  static List<double[]> withoutLoops(List<double[]> points) {
    List<double[]> left = new ArrayList<>(points);
    for (int i = 1; i < left.size(); i++) {
      for (int j = left.size() - 1; j > i + 1; j--) {
        if (areApart(left.get(i - 1), left.get(i), left.get(j - 1), left.get(j))) {
          continue;
        }
        double[] at = crossing(left.get(i - 1), left.get(i), left.get(j - 1), left.get(j));
        if (at != null) {
          double[] meet = between(left.get(i - 1), left.get(i), at[0]);
          left.subList(i, j).clear();
          left.add(i, meet);
          break;
        }
      }
    }
    return left;
  }
}
