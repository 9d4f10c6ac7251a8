package chinelog.reckon.trade;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A hull below a plane of water that may lie aslant to it: heeled to one side and trimmed. Its deck
 * is taken as flat from sheer to sheer, and tight.
 *
 * <p>Lengths in m; y is athwart, positive on the side that goes down, z is up, both in the hull.
 */
final class Inclined {

  private final List<HullSection> stations;
  private final List<double[][]> outlines = new ArrayList<>();
  private final FairCurve.Shape shape;

  /** What lies below the water: volume in m³, and its centre. */
  record Immersed(double volume, double x, double y, double z) {}

  /**
   * @param pieces into which the outline between two heights of the offsets is divided
   */
  Inclined(List<HullSection> stations, FairCurve.Shape shape, int pieces) {
    this.stations = stations;
    this.shape = shape;
    for (HullSection station : stations) {
      outlines.add(outline(station, pieces));
    }
  }

  /** Closed outline {@code {y, z}} of a station, both sides and the deck. */
  private static double[][] outline(HullSection s, int pieces) {
    List<double[]> side = new ArrayList<>();
    double[] z = s.z();
    side.add(new double[] {s.half(z[0]), z[0]});
    for (int k = 1; k < z.length; k++) {
      for (int i = 1; i <= pieces; i++) {
        double share = (double) i / pieces;
        double at = z[k - 1] + (z[k] - z[k - 1]) * (k == 1 ? share * share : share);
        side.add(new double[] {s.half(at), at});
      }
    }
    int n = side.size();
    double[][] all = new double[2 * n][];
    for (int i = 0; i < n; i++) {
      all[i] = side.get(i);
      all[2 * n - 1 - i] = new double[] {-side.get(i)[0], side.get(i)[1]};
    }
    return all;
  }

  /**
   * What lies below the water.
   *
   * @param heel in rad
   * @param depth height of the water above the base line at x = 0, square to the water athwart
   * @param slope by how much that rises for each metre forward
   */
  Immersed below(double heel, double depth, double slope) {
    double cos = Math.cos(heel);
    double sin = Math.sin(heel);
    List<double[]> nodes = new ArrayList<>();
    double before = 0;
    for (int i = 0; i < stations.size(); i++) {
      HullSection s = stations.get(i);
      double[] part = clipped(outlines.get(i), cos, sin, depth + slope * s.x());
      double above = lowest(outlines.get(i), cos, sin, depth + slope * s.x());
      if (i > 0 && above < 0 != before < 0) {
        // The lowest line of the hull is taken as straight between two stations.
        double from = stations.get(i - 1).x();
        nodes.add(new double[] {from + (s.x() - from) * before / (before - above), 0, 0, 0});
      }
      before = above;
      nodes.add(new double[] {s.x(), part[0], part[1], part[2]});
    }
    return integrated(nodes);
  }

  /** How high the lowest point of an outline lies above the water; negative below it. */
  private static double lowest(double[][] outline, double cos, double sin, double height) {
    double least = Double.MAX_VALUE;
    for (double[] point : outline) {
      least = Math.min(least, point[1] * cos - point[0] * sin - height);
    }
    return least;
  }

  private Immersed integrated(List<double[]> nodes) {
    int first = 0;
    int last = nodes.size() - 1;
    while (first < last && nodes.get(first + 1)[1] == 0) {
      first++;
    }
    while (last > first && nodes.get(last - 1)[1] == 0) {
      last--;
    }
    List<double[]> wet = nodes.subList(first, last + 1);
    if (wet.size() < 3) {
      return new Immersed(0, 0, 0, 0);
    }
    double[] x = column(wet, 0);
    FairCurve area = FairCurve.of(shape, x, column(wet, 1));
    double volume = area.integral((at, a) -> a);
    double along = area.integral((at, a) -> at * a);
    double across = FairCurve.of(shape, x, column(wet, 2)).integral((at, m) -> m);
    double up = FairCurve.of(shape, x, column(wet, 3)).integral((at, m) -> m);
    return new Immersed(volume, along / volume, across / volume, up / volume);
  }

  /**
   * Where the water cuts a hull: area in m², and second moment about the fore-and-aft line through
   * its centre, in m⁴.
   */
  record Waterplane(double area, double second) {}

  /**
   * The plane of the water inside the hull. Its two edges are followed along the hull, and not
   * their cubes, which a few stations do not tell.
   */
  Waterplane waterplane(double heel, double depth, double slope) {
    double cos = Math.cos(heel);
    double sin = Math.sin(heel);
    List<double[]> nodes = new ArrayList<>();
    double before = 0;
    for (int i = 0; i < stations.size(); i++) {
      HullSection s = stations.get(i);
      double height = depth + slope * s.x();
      double above = lowest(outlines.get(i), cos, sin, height);
      if (i > 0 && above < 0 != before < 0) {
        HullSection wet = above < 0 ? s : stations.get(i - 1);
        double from = stations.get(i - 1).x();
        double half = wet.half(wet.keel());
        nodes.add(new double[] {from + (s.x() - from) * before / (before - above), half, half});
      }
      if (above < 0) {
        double[] edges = edges(outlines.get(i), cos, sin, height);
        nodes.add(new double[] {s.x(), edges[0], edges[1]});
      }
      before = above;
    }
    if (nodes.size() < 3) {
      return new Waterplane(0, 0);
    }
    double[] x = column(nodes, 0);
    FairCurve low = FairCurve.alongAHull(x, column(nodes, 1));
    FairCurve high = FairCurve.alongAHull(x, column(nodes, 2));
    double area = low.integral((at, t) -> t + high.at(at));
    double first = low.integral((at, t) -> (t * t - Math.pow(high.at(at), 2)) / 2);
    double second = low.integral((at, t) -> (t * t * t + Math.pow(high.at(at), 3)) / 3);
    return new Waterplane(area, second - first * first / area);
  }

  /**
   * How far the water reaches within an outline, measured along the water from the middle line of
   * the hull: to the side that goes down, and to the other.
   */
  private static double[] edges(double[][] outline, double cos, double sin, double height) {
    double low = -Double.MAX_VALUE;
    double high = -Double.MAX_VALUE;
    double[] a = outline[outline.length - 1];
    double above = a[1] * cos - a[0] * sin - height;
    for (double[] b : outline) {
      double next = b[1] * cos - b[0] * sin - height;
      if (above <= 0 != next <= 0) {
        double share = above / (above - next);
        double along = (a[0] + share * (b[0] - a[0])) / cos;
        low = Math.max(low, along);
        high = Math.max(high, -along);
      }
      a = b;
      above = next;
    }
    return low + high < 0 ? new double[] {0, 0} : new double[] {low, high};
  }

  private static double[] column(List<double[]> nodes, int i) {
    return nodes.stream().mapToDouble(n -> n[i]).toArray();
  }

  /** Area, ∫y and ∫z of what lies below {@code z cos − y sin = height}. */
  private static double[] clipped(double[][] outline, double cos, double sin, double height) {
    double[] sums = new double[3];
    double @Nullable [] first = null;
    double @Nullable [] before = null;
    double[] a = outline[outline.length - 1];
    double above = a[1] * cos - a[0] * sin - height;
    for (double[] b : outline) {
      double next = b[1] * cos - b[0] * sin - height;
      if (above <= 0 != next <= 0) {
        double share = above / (above - next);
        double[] cut = {a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])};
        add(sums, before, cut);
        first = first == null ? cut : first;
        before = cut;
      }
      if (next <= 0) {
        add(sums, before, b);
        first = first == null ? b : first;
        before = b;
      }
      a = b;
      above = next;
    }
    if (first != null) {
      add(sums, before, first);
    }
    return sums;
  }

  private static void add(double[] sums, double @Nullable [] from, double[] to) {
    if (from == null) {
      return;
    }
    double cross = from[0] * to[1] - to[0] * from[1];
    sums[0] += cross / 2;
    sums[1] += (from[0] + to[0]) * cross / 6;
    sums[2] += (from[1] + to[1]) * cross / 6;
  }
}
