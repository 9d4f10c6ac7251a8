package chinelog.reckon.trade;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** The area of a hull's skin, by flat triangles between neighbouring stations. */
final class Skin {

  private static final int GIRTHS = 40;

  /** The points of one station from keel to top, or of an end of the waterline, all in one. */
  private record Edge(double x, double[][] points) {}

  private Skin() {}

  /** Both sides from keel to top, in m². */
  static double area(List<HullSection> stations) {
    return Arrays.stream(areas(stations)).sum();
  }

  /** The same from each station to the next. */
  static double[] areas(List<HullSection> stations) {
    return between(
        stations.stream().map(s -> new Edge(s.x(), s.divided(GIRTHS, s.top()))).toList());
  }

  /**
   * Both sides below the water from each station to the next, in m².
   *
   * @param ends of the waterline, {@code {x, y}}; between stations
   */
  static double[] wet(List<HullSection> immersed, List<double[]> ends, double draught) {
    List<Edge> edges = new ArrayList<>();
    for (HullSection s : immersed) {
      edges.add(new Edge(s.x(), s.divided(GIRTHS, draught)));
    }
    for (double[] end : ends) {
      double[][] points = new double[GIRTHS + 1][];
      Arrays.fill(points, new double[] {end[1], draught});
      edges.add(new Edge(end[0], points));
    }
    edges.sort(Comparator.comparingDouble(Edge::x));
    return between(edges);
  }

  private static double[] between(List<Edge> edges) {
    double[] all = new double[edges.size() - 1];
    for (int i = 1; i < edges.size(); i++) {
      Edge a = edges.get(i - 1);
      Edge f = edges.get(i);
      double dx = f.x - a.x;
      for (int k = 1; k <= GIRTHS; k++) {
        all[i - 1] += 2 * triangle(0, a.points[k - 1], 0, a.points[k], dx, f.points[k - 1]);
        all[i - 1] += 2 * triangle(dx, f.points[k - 1], dx, f.points[k], 0, a.points[k]);
      }
    }
    return all;
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
