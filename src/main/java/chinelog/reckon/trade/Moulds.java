package chinelog.reckon.trade;

import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.math.MathContext;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * The outlines of station moulds: the hull's surface less the planking, {@code moulds}.
 *
 * <p>The planking's thickness t lies normal to the surface, so in the plane of the station each
 * point moves inward, square to the station's outline, by t √(1 + yx² + yz²) / √(1 + yz²), where yx
 * and yz are the slopes of the half-breadth along the hull and up it. Where the hull runs straight
 * fore and aft that is t; towards the ends it is more. Common practice of the trade; the formula is
 * that of the distance between parallel planes.
 */
final class Moulds {

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "moulds",
              "Station moulds less the thickness of the planking",
              List.of(
                  Offsets.TABLE,
                  Parameter.quantity("thickness", "of the planking", Unit.METRE),
                  Offsets.SIDING,
                  Offsets.MANNER.get(0),
                  Offsets.MANNER.get(1),
                  Parameter.word("station", "one station alone").or("all stations")),
              Moulds::of)
          .yielding(
              "half_…", "mould",
              "bottom_…", "mould.bottom");

  private static final Message METHOD = Message.of("mould.how");

  private Moulds() {}

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    Offsets offsets = Offsets.read(inputs);
    double thickness = Si.positive(inputs, "thickness", Unit.METRE);
    String only = inputs.word("station", "");
    YieldList yields = new YieldList();
    boolean found = false;
    for (int i = 0; i < offsets.stations().size(); i++) {
      Section station = offsets.stations().get(i);
      if (only.isEmpty() || station.name().equals(only)) {
        found = true;
        outline(yields, offsets, i, thickness);
      }
    }
    if (!found) {
      throw new TradeException(
          "station",
          "There is no station \"" + only + "\".",
          "Write a station as the table of offsets names it.");
    }
    return yields.list();
  }

  private static void outline(YieldList yields, Offsets offsets, int index, double thickness)
      throws TradeException {
    Section station = offsets.stations().get(index);
    int n = station.z().length;
    double[] y = new double[n];
    double[] z = new double[n];
    double[] slope = new double[n];
    for (int k = 0; k < n; k++) {
      double[] tangent = tangent(station, k);
      double along = Slant.along(offsets.stations(), index, station.z()[k]);
      // yx² / (1 + yz²) with yz = ty / tz, multiplied out so that a flat bottom does no harm.
      double inward = thickness * Math.sqrt(1 + along * along * tangent[1] * tangent[1]);
      y[k] = station.y()[k] - inward * tangent[1];
      z[k] = station.z()[k] + inward * tangent[0];
      slope[k] = Math.abs(tangent[1]) < 1e-6 ? Double.NaN : tangent[0] / tangent[1];
    }
    String part = Offsets.factPart(station.name());
    double bottom = station.keel();
    if (station.flat() > 0) {
      double rise = Slant.ofKeel(offsets.stations(), index);
      bottom += thickness * Math.sqrt(1 + rise * rise);
      yields.add(
          "bottom_" + part,
          Message.of("mould.bottom", station.name()),
          offsets.units().length(bottom),
          Message.of("mould.bottom.how"));
    }
    for (double height : heights(station, bottom)) {
      double half = at(z, y, slope, height);
      if (half > 0) {
        yields.add(
            "half_" + part + "_" + label(offsets, height),
            Message.of("mould", station.name(), offsets.units().length(height)),
            offsets.units().length(half),
            METHOD);
      }
    }
  }

  /** Those of the offsets; a flat bottom's own instead of what lies within its planking. */
  private static double[] heights(Section station, double bottom) {
    return station.flat() > 0
        ? DoubleStream.concat(
                DoubleStream.of(bottom), Arrays.stream(station.z()).filter(z -> z > bottom + 1e-9))
            .toArray()
        : station.z();
  }

  private static String label(Offsets offsets, double height) throws TradeException {
    return offsets
        .units()
        .length(height)
        .value()
        .round(new MathContext(6))
        .stripTrailingZeros()
        .toPlainString()
        .replace('.', '_');
  }

  /** Unit vector {@code {dy, dz}} along the outline, from keel to top, at a point of it. */
  private static double[] tangent(Section s, int k) {
    int n = s.z().length;
    if (n == 2) {
      return unit(s.y()[1] - s.y()[0], s.z()[1] - s.z()[0]);
    }
    int a = Math.min(Math.max(k - 1, 0), n - 3);
    double[] run = new double[3];
    for (int i = 1; i < 3; i++) {
      run[i] =
          run[i - 1] + Math.hypot(s.z()[a + i] - s.z()[a + i - 1], s.y()[a + i] - s.y()[a + i - 1]);
    }
    double[] ys = Arrays.copyOfRange(s.y(), a, a + 3);
    double[] zs = Arrays.copyOfRange(s.z(), a, a + 3);
    double at = run[k - a];
    return unit(
        Parabola.through(run, ys, 0, 1, 2).slope(at), Parabola.through(run, zs, 0, 1, 2).slope(at));
  }

  private static double[] unit(double dy, double dz) {
    double length = Math.hypot(dy, dz);
    return new double[] {dy / length, dz / length};
  }

  /**
   * The half-breadth of the inner outline at a height, by the cubic that keeps the outline's slope
   * at either end; NaN where the mould does not reach.
   */
  private static double at(double[] z, double[] y, double[] slope, double height) {
    for (int i = 1; i < z.length; i++) {
      double h = z[i] - z[i - 1];
      if (h <= 0 || height < z[i - 1] - 1e-12 || height > z[i] + 1e-12) {
        continue;
      }
      double t = (height - z[i - 1]) / h;
      if (Double.isNaN(slope[i]) || Double.isNaN(slope[i - 1])) {
        return y[i - 1] + t * (y[i] - y[i - 1]);
      }
      double chord = (y[i] - y[i - 1]) / h;
      double t2 = t * t;
      double t3 = t2 * t;
      return (2 * t3 - 3 * t2 + 1) * y[i - 1]
          + (t3 - 2 * t2 + t) * h * within(chord, slope[i - 1])
          + (3 * t2 - 2 * t3) * y[i]
          + (t3 - t2) * h * within(chord, slope[i]);
    }
    return lastPiece(z, y, slope, height);
  }

  /**
   * A slope that lets the cubic rise and fall no more than its ends (Fritsch and Carlson, 1980).
   */
  private static double within(double chord, double slope) {
    return slope * chord <= 0
        ? 0
        : Math.copySign(Math.min(Math.abs(slope), 3 * Math.abs(chord)), chord);
  }

  /** Straight on beyond the inner outline's top, as far as the planking's own height. */
  private static double lastPiece(double[] z, double[] y, double[] slope, double height) {
    int top = z.length - 1;
    boolean above = height > z[top] && !Double.isNaN(slope[top]);
    return above ? y[top] + slope[top] * (height - z[top]) : Double.NaN;
  }
}
