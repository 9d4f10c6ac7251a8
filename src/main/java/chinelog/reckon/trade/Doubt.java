package chinelog.reckon.trade;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;

/**
 * How far a figure of a hull may be out, because its offsets are no finer: each inner station and
 * each inner height is left out in turn, and what the figure changes by is a measure of what the
 * offsets do not tell. The rule of the curves is of the third order at least, so with offsets twice
 * as coarse a figure is out by eight times as much; the half of the change is on the safe side.
 */
final class Doubt {

  private static final double SHARE = 0.5;

  private final Afloat whole;
  private final List<Afloat> lessOne = new ArrayList<>();

  Doubt(List<Section> stations, Afloat whole, double draught, double siding) {
    this.whole = whole;
    for (int i : FairCurve.someOf(1, stations.size() - 1)) {
      List<Section> rest = new ArrayList<>(stations);
      rest.remove(i);
      add(rest, draught, siding);
    }
    double[] heights =
        stations.stream()
            .flatMapToDouble(s -> DoubleStream.of(s.z()))
            .distinct()
            .sorted()
            .toArray();
    for (int i : FairCurve.someOf(0, heights.length)) {
      double height = heights[i];
      List<Section> rest = stations.stream().map(s -> without(s, height)).toList();
      if (!rest.equals(stations)) {
        add(rest, draught, siding);
      }
    }
  }

  private static Section without(Section station, double height) {
    double[] z = station.z();
    for (int k = 1; k < z.length - 1; k++) {
      if (z[k] == height) {
        return station.without(k);
      }
    }
    return station;
  }

  private void add(List<Section> stations, double draught, double siding) {
    try {
      lessOne.add(Afloat.at(stations, draught, siding));
    } catch (TradeException e) {
      // Too few stations are left, so this one tells nothing of how far the figures may be out.
    }
  }

  /** In the figure's own unit. */
  double of(ToDoubleFunction<Afloat> figure) {
    double centre = figure.applyAsDouble(whole);
    return SHARE
        * lessOne.stream()
            .mapToDouble(less -> Math.abs(figure.applyAsDouble(less) - centre))
            .max()
            .orElse(0);
  }
}
