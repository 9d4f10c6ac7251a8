package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A hull at one waterline: integrals over its stations. Lengths in m. */
final class Afloat {

  private final List<HullSection> wet;
  private final double[] x;
  private final double[] area;
  private final double[] moment;
  private final double[] half;
  private final FairCurve areas;
  private final FairCurve moments;
  private final FairCurve halves;
  private final List<double[]> ends;
  private final double draught;

  /** Asked for again and again, so reckoned once; not a number until then. */
  private double volume = Double.NaN;

  private double waterplane = Double.NaN;

  /**
   * @param wet the immersed stations
   * @param nodes of each immersed station and of the ends of the waterline: x, area below the
   *     waterline, its moment about the base line, half-breadth at the waterline
   * @param ends of the waterline between stations, {@code {x, half-breadth}}
   */
  private Afloat(List<HullSection> wet, List<double[]> nodes, List<double[]> ends, double draught) {
    this.ends = List.copyOf(ends);
    this.draught = draught;
    this.wet = List.copyOf(wet);
    x = column(nodes, 0);
    area = column(nodes, 1);
    moment = column(nodes, 2);
    half = column(nodes, 3);
    areas = FairCurve.alongAHull(x, area);
    moments = areas.like(moment);
    halves = FairCurve.alongAHull(x, half);
  }

  private Afloat(Afloat same, FairCurve areas, FairCurve halves) {
    ends = same.ends;
    draught = same.draught;
    wet = same.wet;
    x = same.x;
    area = same.area;
    moment = same.moment;
    half = same.half;
    this.areas = areas;
    moments = areas.like(moment);
    this.halves = halves;
  }

  /** The same hull along another curve, and how much that tells of how far this one is out. */
  record Rival(Afloat afloat, double weight) {}

  /** Through the same areas of stations other curves. */
  List<Rival> byOtherAreas() {
    return areas.rivalsAlongAHull().stream()
        .map(r -> new Rival(new Afloat(this, r.curve(), halves), r.weight()))
        .toList();
  }

  /** Through the same half-breadths at the waterline other curves. */
  List<Rival> byOtherHalves() {
    return halves.rivalsAlongAHull().stream()
        .map(r -> new Rival(new Afloat(this, areas, r.curve()), r.weight()))
        .toList();
  }

  /**
   * The hull of some stations floating at a height above its base line.
   *
   * @param siding half-breadth where the keel leaves the water
   */
  static Afloat at(List<HullSection> stations, double draught, double siding)
      throws TradeException {
    List<double[]> nodes = new ArrayList<>();
    List<HullSection> wet = new ArrayList<>();
    List<double[]> ends = new ArrayList<>();
    for (int i = 0; i < stations.size(); i++) {
      HullSection station = stations.get(i);
      boolean immersed = station.keel() < draught - 1e-9;
      if (i > 0 && immersed != stations.get(i - 1).keel() < draught - 1e-9) {
        double at = crossing(stations.get(i - 1), station, draught);
        nodes.add(new double[] {at, 0, 0, siding});
        ends.add(new double[] {at, siding});
      }
      if (!immersed) {
        continue;
      }
      if (station.top() < draught - 1e-9) {
        throw new TradeException(
            "draught",
            Sentence.of(
                "The waterline lies above the last half-breadth of station {0}.", station.name()),
            "Give a smaller draught, or higher waterlines and the sheer in the table.");
      }
      wet.add(station);
      double height = Math.min(draught, station.top());
      nodes.add(
          new double[] {
            station.x(), station.area(height), station.moment(height), station.half(height)
          });
    }
    if (wet.size() < 3) {
      throw new TradeException(
          "draught",
          Sentence.of("Only {0} stations lie in the water.", wet.size()),
          "Give a greater draught, or more stations.");
    }
    for (int i = 1; i < nodes.size(); i++) {
      if (nodes.get(i)[0] <= nodes.get(i - 1)[0]) {
        throw new TradeException(
            "offsets",
            "The keel rises out of the water between stations.",
            "Look for a keel height that is wrong.");
      }
    }
    return new Afloat(wet, nodes, ends, draught);
  }

  private static double crossing(HullSection a, HullSection b, double height) {
    return a.x() + (b.x() - a.x()) * (height - a.keel()) / (b.keel() - a.keel());
  }

  private static double[] column(List<double[]> nodes, int i) {
    return nodes.stream().mapToDouble(n -> n[i]).toArray();
  }

  List<HullSection> wet() {
    return wet;
  }

  /** What the areas of the stations were integrated along. */
  FairCurve.Shape along() {
    return areas.shape();
  }

  /** Where the areas that are integrated stand, the ends of the waterline with them. */
  double[] nodes() {
    return x.clone();
  }

  double[] nodeAreas() {
    return area.clone();
  }

  double[] nodeMoments() {
    return moment.clone();
  }

  double[] nodeHalves() {
    return half.clone();
  }

  /** The areas of the stations along the hull. */
  FairCurve areas() {
    return areas;
  }

  /** Their moments about the base line. */
  FairCurve moments() {
    return moments;
  }

  /** The half-breadths at the waterline. */
  FairCurve halves() {
    return halves;
  }

  double volume() {
    if (Double.isNaN(volume)) {
      volume = areas.integral((at, a) -> a);
    }
    return volume;
  }

  double lcb() {
    return areas.integral((at, a) -> at * a) / volume();
  }

  double vcb() {
    return moments.integral((at, m) -> m) / volume();
  }

  double waterplane() {
    if (Double.isNaN(waterplane)) {
      waterplane = 2 * halves.integral((at, y) -> y);
    }
    return waterplane;
  }

  double lcf() {
    return 2 * halves.integral((at, y) -> at * y) / waterplane();
  }

  /** Second moment of the waterplane about the middle line, m⁴. */
  double acrossMoment() {
    return halves.integral((at, y) -> y * y * y) * 2 / 3;
  }

  /** Second moment of the waterplane about its own centre, m⁴. */
  double lengthMoment() {
    double centre = lcf();
    return 2 * halves.integral((at, y) -> (at - centre) * (at - centre) * y);
  }

  double wettedSkin() {
    return Arrays.stream(wettedSkins()).sum();
  }

  /** The wetted skin from each station, or end of the waterline, to the next. */
  double[] wettedSkins() {
    return Skin.wet(wet, ends, draught);
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
