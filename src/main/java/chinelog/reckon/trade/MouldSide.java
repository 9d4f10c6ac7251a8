package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * One side of a mould: the hull's outline at a station less the planking, from the middle line up
 * to the top of the station. Lengths in m.
 *
 * <p>The planking's thickness t lies normal to the surface, so in the plane of the station each
 * point moves inward, square to the station's outline, by t √(1 + yx² + yz²) / √(1 + yz²), where yx
 * and yz are the slopes of the half-breadth along the hull and up it. Where the hull runs straight
 * fore and aft that is t; towards the ends it is more. Common practice of the trade; the formula is
 * that of the distance between parallel planes.
 *
 * @param outline points {@code {y, z}} from the middle line, or the side of the keel, up to the top
 */
record MouldSide(HullSection station, List<double[]> outline, double[] along) {

  static MouldSide of(Offsets offsets, int index, double thickness) throws TradeException {
    return of(offsets.stations(), index, thickness);
  }

  static MouldSide of(List<HullSection> stations, int index, double thickness)
      throws TradeException {
    HullSection station = stations.get(index);
    double[] along = new double[station.z().length];
    for (int k = 0; k < along.length; k++) {
      along[k] = Slant.along(stations, index, station.z()[k]);
    }
    List<double[]> whole = new ArrayList<>();
    if (station.flat() > 0) {
      double inward = thickness * Math.hypot(1, Slant.ofKeel(stations, index));
      whole.add(new double[] {0, station.keel() + inward});
      whole.add(new double[] {station.flat(), station.keel() + inward});
    }
    int from = 0;
    for (int k = 1; k < along.length; k++) {
      if (k == along.length - 1 || station.isCorner(k)) {
        join(whole, moved(station, from, k, along, thickness), station, thickness);
        from = k;
      }
    }
    return new MouldSide(station, cut(station, Polyline.withoutLoops(whole), thickness), along);
  }

  /**
   * The outline of a station itself, {@code {y, z}}, from the middle line or the keel's side up.
   */
  static List<double[]> skin(HullSection station) {
    List<double[]> points = new ArrayList<>();
    if (station.flat() > 0) {
      points.add(new double[] {0, station.keel()});
    }
    double[] level = new double[station.z().length];
    int from = 0;
    for (int k = 1; k < level.length; k++) {
      if (k == level.length - 1 || station.isCorner(k)) {
        points.addAll(moved(station, from, k, level, 0));
        from = k;
      }
    }
    return points;
  }

  /** A piece of the outline between corners, moved inwards. */
  private static List<double[]> moved(
      HullSection station, int from, int to, double[] along, double thickness) {
    double[] y = Arrays.copyOfRange(station.y(), from, to + 1);
    double[] z = Arrays.copyOfRange(station.z(), from, to + 1);
    List<double[]> points = new ArrayList<>();
    for (double[] p : Batten.through(y, z).points()) {
      int k = Math.min((int) p[4], to - from - 1);
      double share = p[4] - k;
      double slope = along[from + k] + share * (along[from + k + 1] - along[from + k]);
      double inward = thickness * Math.hypot(1, slope * p[3]);
      points.add(new double[] {p[0] - inward * p[3], p[1] + inward * p[2]});
    }
    return points;
  }

  /** Adds the next piece: cut off where it crosses the one before, or both led on to their meet. */
  private static void join(
      List<double[]> whole, List<double[]> next, HullSection station, double thickness)
      throws TradeException {
    if (whole.isEmpty()) {
      whole.addAll(next);
      return;
    }
    for (int i = whole.size() - 1; i > 0; i--) {
      for (int j = 1; j < next.size(); j++) {
        double[] at =
            Polyline.crossing(whole.get(i - 1), whole.get(i), next.get(j - 1), next.get(j));
        if (at != null) {
          double[] corner = Polyline.between(whole.get(i - 1), whole.get(i), at[0]);
          whole.subList(i, whole.size()).clear();
          whole.add(corner);
          whole.addAll(next.subList(j, next.size()));
          return;
        }
      }
    }
    int last = whole.size() - 1;
    double[] at = Polyline.meeting(whole.get(last - 1), whole.get(last), next.get(0), next.get(1));
    if (at != null && at[0] < 0) {
      throw tooThick(
          station, thickness, "The planking of {0} mm reaches past a corner of station {1}.");
    }
    if (at != null && at[1] < 1) {
      whole.add(Polyline.between(whole.get(last - 1), whole.get(last), at[0]));
    }
    whole.addAll(next);
  }

  /** From the middle line to the top of the station. */
  private static List<double[]> cut(HullSection station, List<double[]> points, double thickness)
      throws TradeException {
    int first = 0;
    while (first < points.size() && points.get(first)[0] < 0) {
      first++;
    }
    List<double[]> left = new ArrayList<>();
    if (first > 0 && first < points.size()) {
      double[] a = points.get(first - 1);
      double[] b = points.get(first);
      left.add(Polyline.between(a, b, a[0] / (a[0] - b[0])));
    }
    left.addAll(points.subList(first, points.size()));
    if (left.size() < 2 || left.stream().skip(1).anyMatch(p -> p[0] <= 0)) {
      throw tooThick(station, thickness, "The planking of {0} mm leaves nothing of station {1}.");
    }
    endAt(station.top(), left);
    return left;
  }

  /** Planking that leans in ends below the top, and the mould is led straight on to it. */
  private static void endAt(double top, List<double[]> points) {
    while (points.size() > 2 && points.get(points.size() - 2)[1] > top) {
      points.remove(points.size() - 1);
    }
    int last = points.size() - 1;
    double[] a = points.get(last - 1);
    double[] b = points.get(last);
    if (b[1] > a[1] && Math.abs(top - b[1]) > 1e-12) {
      double[] end = Polyline.between(a, b, (top - a[1]) / (b[1] - a[1]));
      if (b[1] > top) {
        points.set(last, end);
      } else {
        points.add(end);
      }
    }
  }

  private static TradeException tooThick(HullSection station, double thickness, String what) {
    return new TradeException(
        "thickness",
        Sentence.of(what, String.format(Locale.ROOT, "%.2f", thickness * 1000), station.name()),
        Sentence.of(
            "Look at the unit of the thickness, or take station {0} out of the table.",
            station.name()));
  }

  double bottom() {
    return outline.get(0)[1];
  }

  double top() {
    return station.top();
  }

  /** The half-breadth at a height; NaN where the mould does not reach. */
  double half(double height) {
    int i = above(height);
    if (i == 0) {
      return Double.NaN;
    }
    double[] a = outline.get(i - 1);
    double[] b = outline.get(i);
    return a[0] + (height - a[1]) / (b[1] - a[1]) * (b[0] - a[0]);
  }

  /** The half-breadth at a height, straight between the two points of the outline beside it. */
  Message worked(ShopUnits units, double height) throws TradeException {
    double[] a = outline.get(above(height) - 1);
    double[] b = outline.get(above(height));
    Quantity from = units.length(a[0]);
    return YieldList.worked(
        "{0} + ({1} − {2}) ÷ ({3} − {2}) × ({4} − {0})",
        from, units.length(height), units.length(a[1]), units.length(b[1]), units.length(b[0]));
  }

  /** The height of the mould's lower edge over a flat bottom. */
  static Message bottomWorked(ShopUnits units, Offsets offsets, int index, double thickness)
      throws TradeException {
    return YieldList.worked(
        "{0} + {1} × √(1 + ({2})²)",
        units.length(offsets.stations().get(index).keel()),
        units.length(thickness),
        Si.number(Slant.ofKeel(offsets.stations(), index)));
  }

  /** The number of the first point at or above a height; 0 where the mould does not reach. */
  private int above(double height) {
    for (int i = 1; i < outline.size(); i++) {
      double a = outline.get(i - 1)[1];
      double b = outline.get(i)[1];
      if (height >= a - 1e-12 && height <= b + 1e-12 && b > a) {
        return i;
      }
    }
    return 0;
  }

  double widest() {
    return outline.stream().mapToDouble(p -> p[0]).max().orElseThrow();
  }

  /**
   * The angle between the hull's surface and square to the mould's face at a height, in radians:
   * atan(yx / √(1 + yz²)). NaN where the mould does not reach.
   */
  double bevel(double height) {
    int i = above(height);
    if (i == 0) {
      return Double.NaN;
    }
    double[] a = outline.get(i - 1);
    double[] b = outline.get(i);
    double up = (b[1] - a[1]) / Math.hypot(b[0] - a[0], b[1] - a[1]);
    return Math.atan(Math.abs(slope(height)) * up);
  }

  private double slope(double height) {
    double[] z = station.z();
    int k = 0;
    while (k < z.length - 2 && z[k + 1] < height) {
      k++;
    }
    double share = Math.max(0, Math.min(1, (height - z[k]) / (z[k + 1] - z[k])));
    return along[k] + share * (along[k + 1] - along[k]);
  }
}
