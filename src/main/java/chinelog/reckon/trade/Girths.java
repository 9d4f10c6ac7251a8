package chinelog.reckon.trade;

import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Girths of one side at each station, in m, from aft forward.
 *
 * @param stations those of the offsets; none where the girths were measured
 * @param runs length of a strip from each station to the next along the sheer, or straight
 */
record Girths(
    List<String> names,
    double[] x,
    double[] girth,
    List<HullSection> stations,
    double[] runs,
    ShopUnits units) {

  /** Length of a strip along the sheer, or straight from end to end. */
  double run() {
    return Arrays.stream(runs).sum();
  }

  static Girths of(Inputs inputs) throws TradeException, QuantityException {
    boolean measured = inputs.findTable("girths").isPresent();
    if (measured == inputs.findTable("offsets").isPresent()) {
      throw new TradeException(
          measured ? "girths" : "offsets",
          measured ? "Girths are given twice." : "There is nothing to take girths from.",
          "Give either offsets or girths.");
    }
    return measured ? measured(inputs) : fromOffsets(Offsets.read(inputs));
  }

  private static Girths measured(Inputs inputs) throws TradeException, QuantityException {
    Columns columns = new Columns("girths", inputs.table("girths"));
    double[] x = columns.numbers("x", Unit.METRE);
    CurveArea.requireRising(columns, x);
    columns.requireDistinct("station");
    double[] girth = columns.numbers("girth", Unit.METRE);
    for (int i = 0; i < girth.length; i++) {
      if (girth[i] < 0) {
        throw columns.at(i, "A girth is negative.", "Measure it round the mould.");
      }
    }
    List<String> names =
        IntStream.range(0, x.length).mapToObj(i -> columns.text(i, "station")).toList();
    return new Girths(
        names,
        x,
        girth,
        List.of(),
        IntStream.range(1, x.length).mapToDouble(i -> x[i] - x[i - 1]).toArray(),
        ShopUnits.of(columns.unit("x")));
  }

  private static Girths fromOffsets(Offsets offsets) {
    List<HullSection> stations = offsets.stations();
    double[] runs = new double[stations.size() - 1];
    for (int i = 1; i < stations.size(); i++) {
      HullSection a = stations.get(i - 1);
      HullSection b = stations.get(i);
      double level = Math.hypot(b.x() - a.x(), b.y()[b.y().length - 1] - a.y()[a.y().length - 1]);
      runs[i - 1] = Math.hypot(level, b.top() - a.top());
    }
    return new Girths(
        stations.stream().map(HullSection::name).toList(),
        offsets.stationX(),
        stations.stream().mapToDouble(HullSection::girth).toArray(),
        stations,
        runs,
        offsets.units());
  }

  /** How far a girth may be out, because its station's heights are no closer; 0 if measured. */
  double doubt(int station) {
    if (stations.isEmpty()) {
      return 0;
    }
    HullSection own = stations.get(station);
    return Doubt.ofGirth(own, Doubt.coarser(own), HullSection::girth);
  }

  double greatest() {
    return Arrays.stream(girth).max().orElseThrow();
  }

  int fullest() {
    int best = 0;
    for (int i = 1; i < girth.length; i++) {
      best = girth[i] > girth[best] ? i : best;
    }
    return best;
  }

  /** Area of both sides, in m². */
  double area() {
    return stations.isEmpty() ? 2 * Rule.bySpacing(x).of(girth) : Skin.area(stations);
  }
}
