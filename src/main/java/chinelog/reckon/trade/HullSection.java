package chinelog.reckon.trade;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;

/** One station of a hull: half-breadths from the keel up to the sheer. Lengths in m. */
final class HullSection {

  private final String name;
  private final double x;
  private final double[] z;
  private final double[] y;
  private final double flat;
  private final double[] corners;
  private final Outline outline;

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
    this.outline =
        Outline.through(z, y, IntStream.range(1, z.length - 1).filter(this::isCorner).toArray());
  }

  private HullSection(HullSection same, Outline outline) {
    name = same.name;
    x = same.x;
    z = same.z;
    y = same.y;
    flat = same.flat;
    corners = same.corners;
    this.outline = outline;
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

  /** This station without the half-breadth numbered {@code k}; the same one each time. */
  HullSection without(int k) {
    return less.computeIfAbsent(
        k,
        i ->
            new HullSection(
                name, x, FairCurve.without(z, i), FairCurve.without(y, i), flat, corners));
  }

  /** This station with each of its {@link Outline#rivals()}. */
  Map<FairCurve.Shape, HullSection> rivals() {
    Map<FairCurve.Shape, HullSection> all = new EnumMap<>(FairCurve.Shape.class);
    outline.rivals().forEach((shape, other) -> all.put(shape, new HullSection(this, other)));
    return all;
  }

  /** The half-breadth at a height between keel and top. */
  double half(double height) {
    return outline.at(height);
  }

  /** Both sides together up to a height, in m². */
  double area(double height) {
    return 2 * outline.integral(keel(), height, (up, half) -> half);
  }

  /** Moment about the base line of the area up to a height, in m³. */
  double moment(double height) {
    return 2 * outline.integral(keel(), height, (up, half) -> up * half);
  }

  /** The outline whose integral up to a height is the half of {@link #area}. */
  Outline outline() {
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

  /** Which shares of the girth of one side up to a height are passed at each given point. */
  double[] shares(double height) {
    double[] chords = chords(Math.min(height, top()));
    double all = Arrays.stream(chords).sum();
    double passed = 0;
    double[] shares = new double[chords.length];
    for (int i = 0; i < chords.length; i++) {
      passed += chords[i];
      shares[i] = all == 0 ? 0 : Math.min(1, passed / all);
    }
    return shares;
  }

  /**
   * Points {@code {y, z}} on the skin of one side where shares of its girth up to a height are
   * passed.
   *
   * @param shares rising, from 0 to 1
   */
  double[][] divided(double[] shares, double height) {
    double[][] outline = pointsTo(Math.min(height, top()));
    double girth = girth(outline[0], outline[1]);
    boolean hasFlat = flat > 0;
    double[] py = hasFlat ? prepend(0, outline[1]) : outline[1];
    double[] pz = hasFlat ? prepend(z[0], outline[0]) : outline[0];
    double[][] points = new double[shares.length][];
    int i = 1;
    double passed = 0;
    for (int k = 0; k < shares.length; k++) {
      double at = shares[k] * girth;
      double chord = Math.hypot(py[i] - py[i - 1], pz[i] - pz[i - 1]);
      while (i + 1 < pz.length && passed + chord < at) {
        passed += chord;
        i++;
        chord = Math.hypot(py[i] - py[i - 1], pz[i] - pz[i - 1]);
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
