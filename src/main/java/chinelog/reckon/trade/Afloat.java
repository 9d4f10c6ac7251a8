package chinelog.reckon.trade;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A hull at one waterline: integrals over its stations. Lengths in m.
 *
 * @param x of the immersed stations and of the ends of the waterline
 * @param area of each station below the waterline, m²
 * @param half half-breadth of each at the waterline
 * @param girth wetted, of one side
 */
record Afloat(
    List<Section> wet,
    double[] x,
    double[] area,
    double[] moment,
    double[] half,
    double[] girth,
    Rule along) {

  /**
   * The hull of {@code offsets} floating at a height above its base line.
   *
   * @param siding half-breadth where the keel leaves the water
   */
  static Afloat at(Offsets offsets, double draught, double siding) throws TradeException {
    List<double[]> nodes = new ArrayList<>();
    List<Section> wet = new ArrayList<>();
    List<Section> all = offsets.stations();
    for (int i = 0; i < all.size(); i++) {
      Section station = all.get(i);
      boolean immersed = station.keel() < draught - 1e-9;
      if (i > 0 && immersed != all.get(i - 1).keel() < draught - 1e-9) {
        nodes.add(new double[] {crossing(all.get(i - 1), station, draught), 0, 0, siding, 0});
      }
      if (!immersed) {
        continue;
      }
      if (station.top() < draught - 1e-9) {
        throw new TradeException(
            "draught",
            "The waterline lies above the last half-breadth of station " + station.name() + ".",
            "Give a smaller draught, or higher waterlines and the sheer in the table.");
      }
      Section below = station.below(draught);
      wet.add(below);
      nodes.add(
          new double[] {
            station.x(), below.area(), below.moment(), below.half(draught), below.girth()
          });
    }
    if (wet.size() < 3) {
      throw new TradeException(
          "draught",
          "Only " + wet.size() + " stations lie in the water.",
          "Give a greater draught, or more stations.");
    }
    double[] x = column(nodes, 0);
    for (int i = 1; i < x.length; i++) {
      if (x[i] <= x[i - 1]) {
        throw new TradeException(
            "offsets",
            "The keel rises out of the water between stations.",
            "Look for a keel height that is wrong.");
      }
    }
    return new Afloat(
        List.copyOf(wet),
        x,
        column(nodes, 1),
        column(nodes, 2),
        column(nodes, 3),
        column(nodes, 4),
        Rule.bySpacing(x));
  }

  private static double crossing(Section a, Section b, double height) {
    return a.x() + (b.x() - a.x()) * (height - a.keel()) / (b.keel() - a.keel());
  }

  private static double[] column(List<double[]> nodes, int i) {
    return nodes.stream().mapToDouble(n -> n[i]).toArray();
  }

  double volume() {
    return along.of(area);
  }

  double lcb() {
    return along.moment(x, area, 1) / volume();
  }

  double vcb() {
    return along.of(moment) / volume();
  }

  double waterplane() {
    return 2 * along.of(half);
  }

  double lcf() {
    return 2 * along.moment(x, half, 1) / waterplane();
  }

  /** Second moment of the waterplane about the middle line, m⁴. */
  double acrossMoment() {
    double[] cubes = new double[half.length];
    Arrays.setAll(cubes, i -> half[i] * half[i] * half[i]);
    return along.of(cubes) * 2 / 3;
  }

  /** Second moment of the waterplane about its own centre, m⁴. */
  double lengthMoment() {
    double about = 2 * along.moment(x, half, 2);
    return about - waterplane() * lcf() * lcf();
  }

  double wettedSkin() {
    return 2 * along.of(girth);
  }

  double length() {
    return x[x.length - 1] - x[0];
  }

  double breadth() {
    return 2 * Arrays.stream(half).max().orElseThrow();
  }

  double greatestArea() {
    return Arrays.stream(area).max().orElseThrow();
  }
}
