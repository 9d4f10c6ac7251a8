package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * How far a figure of a hull may be out, because its offsets are no finer: each inner station and
 * each inner height is left out in turn, and what the figure changes by is a measure of what the
 * offsets do not tell. The rule of the curves is of the third order at least, so with offsets twice
 * as coarse a figure is out by eight times as much; the half of the change is on the safe side.
 *
 * <p>At a full end or bottom a curve is of a lower order, and no ordinate stands between the last
 * one and the end that could be left out. So other curves through the same offsets are tried, which
 * count as far as they tell what is left out ({@link FairCurve.Rival}).
 *
 * <p>What stations and what heights leave open is not the same, so the two are added as squares
 * (Guide to the Expression of Uncertainty in Measurement, JCGM 100:2008, 5.1.2).
 */
final class Doubt {

  private static final double SHARE = 0.5;

  /** A reckoned figure is shown to so many digits. */
  private static final int DIGITS_SHOWN = 4;

  /** Of lengths nothing finer than hundredths of a millimetre is shown. */
  private static final double FINEST_SHOWN = 1e-5;

  private final Afloat whole;
  private final List<HullSection> stations;
  private final List<List<HullSection>> lessHeights;
  private final List<List<HullSection>> lessStations;
  private final List<Afloat> lower;
  private final List<Afloat> shorter;
  private final List<Afloat> fuller;
  private final List<Afloat.Rival> otherAreas;
  private final List<Afloat.Rival> otherHalves;

  Doubt(List<HullSection> stations, Afloat whole, double draught, double siding) {
    this.whole = whole;
    this.stations = stations;
    lessHeights = lessHeights(stations);
    lessStations = lessStations(stations);
    lower = reckoned(lessHeights, rest -> Afloat.at(rest, draught, siding));
    shorter = reckoned(lessStations, rest -> Afloat.at(rest, draught, siding));
    fuller = reckoned(otherOutlines(stations), all -> Afloat.at(all, draught, siding));
    otherAreas = whole.byOtherAreas();
    otherHalves = whole.byOtherHalves();
  }

  /** What is reckoned from offsets, if enough of them are left. */
  @FunctionalInterface
  interface Reckoned<T> {
    T of(List<HullSection> stations) throws TradeException;
  }

  /** The same reckoned from each set of offsets, where it can be. */
  static <T> List<T> reckoned(List<List<HullSection>> sets, Reckoned<T> reckoned) {
    List<T> all = new ArrayList<>();
    for (List<HullSection> set : sets) {
      try {
        all.add(reckoned.of(set));
      } catch (TradeException e) {
        // Too few are left, so this set tells nothing of how far the figures may be out.
        continue;
      }
    }
    return all;
  }

  /** The offsets without one inner station, each in turn. */
  static List<List<HullSection>> lessStations(List<HullSection> stations) {
    List<List<HullSection>> all = new ArrayList<>();
    for (int i : FairCurve.someOf(1, stations.size() - 1)) {
      List<HullSection> rest = new ArrayList<>(stations);
      rest.remove(i);
      all.add(rest);
    }
    return all;
  }

  /** The offsets without one inner height, each in turn. */
  static List<List<HullSection>> lessHeights(List<HullSection> stations) {
    double[] heights =
        stations.stream()
            .flatMapToDouble(s -> DoubleStream.of(s.z()))
            .distinct()
            .sorted()
            .toArray();
    List<List<HullSection>> all = new ArrayList<>();
    for (int i : FairCurve.someOf(0, heights.length)) {
      double height = heights[i];
      List<HullSection> rest = stations.stream().map(s -> without(s, height)).toList();
      if (!rest.equals(stations)) {
        all.add(rest);
      }
    }
    return all;
  }

  /** The stations on the way to outlines of another shape, each shape in turn. */
  static List<List<HullSection>> otherOutlines(List<HullSection> stations) {
    List<Map<FairCurve.Shape, HullSection>> rivals =
        stations.stream().map(HullSection::rivals).toList();
    return rivals.stream()
        .flatMap(r -> r.keySet().stream())
        .distinct()
        .sorted()
        .map(
            shape ->
                IntStream.range(0, stations.size())
                    .mapToObj(i -> rivals.get(i).getOrDefault(shape, stations.get(i)))
                    .toList())
        .toList();
  }

  private static HullSection without(HullSection station, double height) {
    double[] z = station.z();
    for (int k = 1; k < z.length - 1; k++) {
      if (z[k] == height && !station.isCorner(k)) {
        return station.without(k);
      }
    }
    return station;
  }

  /** In the figure's own unit. */
  double of(ToDoubleFunction<Afloat> figure) {
    return Math.hypot(
        of(whole, lower, figure) + most(whole, fuller, figure),
        of(whole, shorter, figure) + told(otherAreas, figure) + told(otherHalves, figure));
  }

  /** The most by which other curves tell that a figure may be out. */
  private double told(List<Afloat.Rival> others, ToDoubleFunction<Afloat> figure) {
    return others.stream()
        .mapToDouble(o -> o.weight() * most(whole, List.of(o.afloat()), figure))
        .max()
        .orElse(0);
  }

  /** How far an area of a station may be out, because its heights are no closer. */
  static double ofArea(
      HullSection own, List<HullSection> coarser, ToDoubleFunction<HullSection> area) {
    return of(own, coarser, area) + most(own, List.copyOf(own.rivals().values()), area);
  }

  /** How far a figure may be out, from what it is without a part of the offsets. */
  static <T> double of(T whole, List<T> lessOne, ToDoubleFunction<T> figure) {
    return SHARE * most(whole, lessOne, figure);
  }

  /**
   * How far a girth may be out that is a sum of chords: each is shorter than its part of the curve,
   * so that what every height adds counts.
   */
  static <T> double ofGirth(T whole, List<T> lessOne, ToDoubleFunction<T> girth) {
    double own = girth.applyAsDouble(whole);
    return SHARE * lessOne.stream().mapToDouble(s -> Math.abs(own - girth.applyAsDouble(s))).sum();
  }

  /** The same of a skin, whose girths are sums of chords. */
  double ofSkin(ToDoubleFunction<Afloat> skin) {
    return ofGirth(whole, lower, skin) + of(whole, shorter, skin);
  }

  /** The most by which a figure differs from what it is otherwise. */
  static <T> double most(T whole, List<T> others, ToDoubleFunction<T> figure) {
    double centre = figure.applyAsDouble(whole);
    return others.stream()
        .mapToDouble(other -> Math.abs(figure.applyAsDouble(other) - centre))
        .filter(Double::isFinite)
        .max()
        .orElse(0);
  }

  /** The same of the skin of all stations up to their tops. */
  double ofWholeSkin(ToDoubleFunction<List<HullSection>> skin) {
    return ofGirth(stations, lessHeights, skin) + of(stations, lessStations, skin);
  }

  /** A station without each of its inner heights in turn; its corners stay. */
  static List<HullSection> coarser(HullSection station) {
    return IntStream.range(1, station.z().length - 1)
        .filter(k -> !station.isCorner(k))
        .mapToObj(station::without)
        .toList();
  }

  /** Turns a figure in SI units into the one that is shown. */
  @FunctionalInterface
  interface Shown {
    Quantity of(double si) throws TradeException;
  }

  /** A length to cut by, in m, as {@link #doubted}: no finer than it is shown. */
  static Quantity cut(double length, double spread, Shown shown) throws TradeException {
    return doubted(length, spread > FINEST_SHOWN ? spread : 0, shown);
  }

  /** A figure with its doubt as tolerance, where that reaches half of the last digit shown. */
  static Quantity doubted(double value, double spread, Shown shown) throws TradeException {
    double digit = Math.pow(10, Math.floor(Math.log10(Math.abs(value))) + 1 - DIGITS_SHOWN);
    Quantity quantity = shown.of(value);
    try {
      return spread < digit / 2 || spread == 0
          ? quantity
          : quantity.withTolerance(shown.of(spread));
    } catch (QuantityException e) {
      throw new IllegalStateException("a unit did not agree with itself", e);
    }
  }
}
