package chinelog.reckon.trade;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToDoubleFunction;

/** One station of a hull: half-breadths from the keel up to the sheer. Lengths in m. */
final class HullSection {

  private final String name;
  private final double x;
  private final double[] z;
  private final double[] y;
  private final double flat;
  private final double[] corners;
  private final FairCurve outline;

  /** What the outline gives way to, and by how much of the way; none of it where 0. */
  private final FairCurve other;

  private final double toOther;

  /** Those without one half-breadth that were asked for: their curves are dear to find. */
  private final Map<Integer, HullSection> less = new ConcurrentHashMap<>();

  /**
   * @param name as the table calls it
   * @param x from the aft end
   * @param z heights above the base line, rising; the first is the keel's
   * @param y half-breadths at those heights
   * @param flat half-breadth of the flat bottom, which is part of the skin; 0 where the skin begins
   *     at the side of the keel
   * @param corners those of the heights at which the outline has a corner, such as a chine
   */
  HullSection(String name, double x, double[] z, double[] y, double flat, double[] corners) {
    this.name = name;
    this.x = x;
    this.z = z;
    this.y = y;
    this.flat = flat;
    this.corners = corners;
    this.outline = FairCurve.upAStation(z, y);
    other = outline;
    toOther = 0;
  }

  private HullSection(HullSection same, FairCurve.Rival rival) {
    name = same.name;
    x = same.x;
    z = same.z;
    y = same.y;
    flat = same.flat;
    corners = same.corners;
    outline = same.outline;
    other = rival.curve();
    toOther = rival.weight();
  }

  String name() {
    return name;
  }

  double x() {
    return x;
  }

  double[] z() {
    return z;
  }

  double[] y() {
    return y;
  }

  /** Whether the outline has a corner at the half-breadth numbered {@code k}. */
  boolean isCorner(int k) {
    return Arrays.stream(corners).anyMatch(c -> Math.abs(c - z[k]) < 1e-9);
  }

  double keel() {
    return z[0];
  }

  double top() {
    return z[z.length - 1];
  }

  FairCurve.Shape shape() {
    return outline.shape();
  }

  /** This station without the half-breadth numbered {@code k}; the same one each time. */
  HullSection without(int k) {
    return less.computeIfAbsent(
        k,
        i ->
            new HullSection(
                name, x, FairCurve.without(z, i), FairCurve.without(y, i), flat, corners));
  }

  /**
   * This station with its outline on the way to another curve through the same half-breadths: as
   * far as that curve tells of how far the outline may be out.
   */
  Map<FairCurve.Shape, HullSection> rivals() {
    Map<FairCurve.Shape, HullSection> all = new EnumMap<>(FairCurve.Shape.class);
    outline.rivalsUpAStation().forEach(r -> all.put(r.curve().shape(), new HullSection(this, r)));
    return all;
  }

  private double of(ToDoubleFunction<FairCurve> figure) {
    double own = figure.applyAsDouble(outline);
    return toOther == 0 ? own : own + toOther * (figure.applyAsDouble(other) - own);
  }

  /** The half-breadth at a height between keel and top. */
  double half(double height) {
    return of(curve -> curve.at(height));
  }

  /** Both sides together up to a height, in m². */
  double area(double height) {
    return 2 * of(curve -> curve.integral(keel(), height, (up, half) -> half));
  }

  /** Moment about the base line of the area up to a height, in m³. */
  double moment(double height) {
    return 2 * of(curve -> curve.integral(keel(), height, (up, half) -> up * half));
  }

  /** The outline whose integral up to a height is the half of {@link #area}. */
  FairCurve outline() {
    return outline;
  }

  /** Half-breadth of the flat bottom. */
  double flat() {
    return flat;
  }

  /** Length round one side along the skin, by chords. */
  double girth() {
    return girth(z, y);
  }

  /** Length round one side along the skin up to a height between keel and top, by chords. */
  double girth(double height) {
    double[][] points = pointsTo(height);
    return girth(points[0], points[1]);
  }

  /** Heights and half-breadths of the outline up to a height between keel and top. */
  private double[][] pointsTo(double height) {
    int kept = 0;
    while (kept < z.length && z[kept] < height - 1e-9) {
      kept++;
    }
    double[] heights = Arrays.copyOf(z, kept + 1);
    double[] halves = Arrays.copyOf(y, kept + 1);
    heights[kept] = height;
    halves[kept] = half(height);
    return new double[][] {heights, halves};
  }

  private double girth(double[] heights, double[] halves) {
    return Arrays.stream(chords(heights, halves)).sum();
  }

  /** What the girth of one side up to a height is the sum of: the flat bottom, then the chords. */
  double[] chords(double height) {
    double[][] points = pointsTo(height);
    return chords(points[0], points[1]);
  }

  private double[] chords(double[] heights, double[] halves) {
    double[] all = new double[heights.length];
    all[0] = flat;
    for (int i = 1; i < heights.length; i++) {
      all[i] = Math.hypot(heights[i] - heights[i - 1], halves[i] - halves[i - 1]);
    }
    return all;
  }

  /**
   * Points {@code {y, z}} that divide the skin of one side up to a height into {@code n} equal
   * girths.
   */
  double[][] divided(int n, double height) {
    double[][] points = new double[n + 1][];
    double[][] outline = pointsTo(Math.min(height, top()));
    double step = girth(outline[0], outline[1]) / n;
    boolean hasFlat = flat > 0;
    double[] py = hasFlat ? prepend(0, outline[1]) : outline[1];
    double[] pz = hasFlat ? prepend(z[0], outline[0]) : outline[0];
    int i = 1;
    double passed = 0;
    for (int k = 0; k <= n; k++) {
      double at = k * step;
      double chord = Math.hypot(pz[i] - pz[i - 1], py[i] - py[i - 1]);
      while (i + 1 < pz.length && passed + chord < at) {
        passed += chord;
        i++;
        chord = Math.hypot(pz[i] - pz[i - 1], py[i] - py[i - 1]);
      }
      double share = chord == 0 ? 0 : Math.min(1, (at - passed) / chord);
      points[k] =
          new double[] {
            py[i - 1] + share * (py[i] - py[i - 1]), pz[i - 1] + share * (pz[i] - pz[i - 1])
          };
    }
    return points;
  }

  private static double[] prepend(double first, double[] rest) {
    double[] all = new double[rest.length + 1];
    all[0] = first;
    System.arraycopy(rest, 0, all, 1, rest.length);
    return all;
  }
}
