package chinelog.reckon.trade;

import java.util.List;

/** The area of a hull's skin. */
final class Skin {

  private static final int GIRTHS = 40;

  private Skin() {}

  /** Both sides, in m², by flat triangles between neighbouring stations. */
  static double area(List<Section> stations) {
    double sum = 0;
    for (int i = 1; i < stations.size(); i++) {
      sum += between(stations.get(i - 1), stations.get(i));
    }
    return 2 * sum;
  }

  private static double between(Section aft, Section fore) {
    double[][] a = aft.divided(GIRTHS);
    double[][] f = fore.divided(GIRTHS);
    double dx = fore.x() - aft.x();
    double sum = 0;
    for (int k = 1; k <= GIRTHS; k++) {
      sum += triangle(0, a[k - 1], 0, a[k], dx, f[k - 1]);
      sum += triangle(dx, f[k - 1], dx, f[k], 0, a[k]);
    }
    return sum;
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
