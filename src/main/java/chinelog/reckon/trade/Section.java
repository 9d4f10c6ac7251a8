package chinelog.reckon.trade;

import java.util.Arrays;

/**
 * One station of a hull: half-breadths from the keel up to the sheer. Lengths in m.
 *
 * @param name as the table calls it
 * @param x from the aft end
 * @param z heights above the base line, rising; the first is the keel's
 * @param y half-breadths at those heights
 * @param flat half-breadth of the flat bottom, which is part of the skin; 0 where the skin begins
 *     at the side of the keel
 */
record Section(String name, double x, double[] z, double[] y, double flat) {

  double keel() {
    return z[0];
  }

  double top() {
    return z[z.length - 1];
  }

  /**
   * The half-breadth at a height between keel and top: by the parabola through the three nearest
   * ordinates, or straight where that would leave the range of its neighbours.
   */
  double half(double height) {
    int i = Arrays.binarySearch(z, height);
    if (i >= 0) {
      return y[i];
    }
    int above = Math.min(Math.max(-i - 1, 1), z.length - 1);
    int below = above - 1;
    double straight =
        y[below] + (y[above] - y[below]) * (height - z[below]) / (z[above] - z[below]);
    int third =
        above + 1 < z.length && (below == 0 || z[above + 1] - height < height - z[below - 1])
            ? above + 1
            : below - 1;
    if (third < 0) {
      return straight;
    }
    double curved = Parabola.through(z, y, below, above, third).at(height);
    boolean inside =
        curved >= Math.min(y[below], y[above]) && curved <= Math.max(y[below], y[above]);
    return inside ? curved : straight;
  }

  /** The part below a height that lies above the keel and not above the top. */
  Section below(double height) {
    int kept = 0;
    while (kept < z.length && z[kept] < height - 1e-9) {
      kept++;
    }
    double[] heights = Arrays.copyOf(z, kept + 1);
    double[] halves = Arrays.copyOf(y, kept + 1);
    heights[kept] = height;
    halves[kept] = half(height);
    return new Section(name, x, heights, halves, flat);
  }

  /** Both sides together, in m². */
  double area() {
    return 2 * Rule.bySpacing(z).of(y);
  }

  /** Moment of the area about the base line, in m³. */
  double moment() {
    return 2 * Rule.bySpacing(z).moment(z, y, 1);
  }

  /** Length round one side along the skin, by chords. */
  double girth() {
    double sum = flat;
    for (int i = 1; i < z.length; i++) {
      sum += Math.hypot(z[i] - z[i - 1], y[i] - y[i - 1]);
    }
    return sum;
  }

  /** Points {@code {y, z}} that divide the skin of one side into {@code n} equal girths. */
  double[][] divided(int n) {
    double[][] points = new double[n + 1][];
    double step = girth() / n;
    boolean hasFlat = flat > 0;
    double[] py = hasFlat ? prepend(0, y) : y;
    double[] pz = hasFlat ? prepend(z[0], z) : z;
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
