package chinelog.reckon.trade;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The area of a hull's skin, by flat triangles between neighbouring stations. */
final class Skin {

  /** Into so many equal girths a station is divided, besides at its given points. */
  private static final int GIRTHS = 40;

  /** One side of a station up to a height, or an end of the waterline, all in one point. */
  private sealed interface Edge {
    double x();

    double[] shares();

    double[][] points(double[] shares);
  }

  private record Side(HullSection station, double height) implements Edge {
    @Override
    public double x() {
      return station.x();
    }

    @Override
    public double[] shares() {
      return station.shares(height);
    }

    @Override
    public double[][] points(double[] shares) {
      return station.divided(shares, height);
    }
  }

  private record End(double x, double y, double z) implements Edge {
    @Override
    public double[] shares() {
      return new double[0];
    }

    @Override
    public double[][] points(double[] shares) {
      return Stream.generate(() -> new double[] {y, z})
          .limit(shares.length)
          .toArray(double[][]::new);
    }
  }

  private Skin() {}

  /** Both sides from keel to top, in m². */
  static double area(List<HullSection> stations) {
    return Arrays.stream(areas(stations)).sum();
  }

  /** The same from each station to the next. */
  static double[] areas(List<HullSection> stations) {
    return between(stations.stream().<Edge>map(s -> new Side(s, s.top())).toList());
  }

  /**
   * Both sides below the water from each station to the next, in m².
   *
   * @param ends of the waterline, {@code {x, y}}; between stations
   */
  static double[] wet(List<HullSection> immersed, List<double[]> ends, double draught) {
    return between(
        Stream.<Edge>concat(
                immersed.stream().map(s -> new Side(s, draught)),
                ends.stream().map(end -> new End(end[0], end[1], draught)))
            .sorted(Comparator.comparingDouble(Edge::x))
            .toList());
  }

  private static double[] between(List<Edge> edges) {
    double[] all = new double[edges.size() - 1];
    for (int i = 1; i < edges.size(); i++) {
      Edge a = edges.get(i - 1);
      Edge f = edges.get(i);
      double[] shares = shares(a, f);
      double[][] aft = a.points(shares);
      double[][] fore = f.points(shares);
      double dx = f.x() - a.x();
      for (int k = 1; k < shares.length; k++) {
        all[i - 1] += 2 * triangle(0, aft[k - 1], 0, aft[k], dx, fore[k - 1]);
        all[i - 1] += 2 * triangle(dx, fore[k - 1], dx, fore[k], 0, aft[k]);
      }
    }
    return all;
  }

  /** So that no chord cuts a corner, the given points of both stations are among them. */
  private static double[] shares(Edge a, Edge f) {
    return DoubleStream.concat(
            IntStream.rangeClosed(0, GIRTHS).mapToDouble(k -> (double) k / GIRTHS),
            DoubleStream.concat(Arrays.stream(a.shares()), Arrays.stream(f.shares())))
        .sorted()
        .distinct()
        .toArray();
  }

  private static double triangle(
      double x0, double[] p0, double x1, double[] p1, double x2, double[] p2) {
    double ux = x1 - x0;
    double uy = p1[0] - p0[0];
    double uz = p1[1] - p0[1];
    double vx = x2 - x0;
    double vy = p2[0] - p0[0];
    double vz = p2[1] - p0[1];
    double nx = uy * vz - uz * vy;
    double ny = uz * vx - ux * vz;
    double nz = ux * vy - uy * vx;
    return Math.sqrt(nx * nx + ny * ny + nz * nz) / 2;
  }
}
