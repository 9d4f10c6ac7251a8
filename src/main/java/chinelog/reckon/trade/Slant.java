package chinelog.reckon.trade;

import java.util.List;
import java.util.function.ToDoubleFunction;

/** How a hull's surface leans along its length, by parabolas through neighbouring stations. */
final class Slant {

  private Slant() {}

  /**
   * Slope of the half-breadth along the hull at a height, from the three nearest stations that
   * reach it, this one in their middle where it can be. Above the sheer of its neighbours a station
   * goes on as it does at their height.
   */
  static double along(List<HullSection> all, int index, double at) {
    double height = Math.min(at, lowestTop(all, index));
    int first = index > 0 && reaches(all.get(index - 1), height) ? index - 1 : index;
    int last = index + 1 < all.size() && reaches(all.get(index + 1), height) ? index + 1 : index;
    if (first == index
        && last > index
        && last + 1 < all.size()
        && reaches(all.get(last + 1), height)) {
      last++;
    } else if (last == index && first < index && first > 0 && reaches(all.get(first - 1), height)) {
      first--;
    }
    return along(all, index, first, last, s -> s.half(height));
  }

  private static double lowestTop(List<HullSection> all, int index) {
    int last = Math.min(all.size(), index + 2);
    return all.subList(Math.max(0, index - 1), last).stream()
        .mapToDouble(HullSection::top)
        .min()
        .orElseThrow();
  }

  /** Slope of the keel's height along the hull. */
  static double ofKeel(List<HullSection> all, int index) {
    return along(
        all, index, Math.max(0, index - 1), Math.min(all.size() - 1, index + 1), HullSection::keel);
  }

  private static double along(
      List<HullSection> all, int index, int first, int last, ToDoubleFunction<HullSection> figure) {
    if (first == last) {
      return 0;
    }
    double[] x = new double[last - first + 1];
    double[] y = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      x[i] = all.get(first + i).x();
      y[i] = figure.applyAsDouble(all.get(first + i));
    }
    return x.length == 3
        ? Parabola.through(x, y, 0, 1, 2).slope(all.get(index).x())
        : (y[1] - y[0]) / (x[1] - x[0]);
  }

  private static boolean reaches(HullSection s, double height) {
    return s.keel() <= height + 1e-12 && height <= s.top() + 1e-12;
  }
}
