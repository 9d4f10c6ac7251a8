package chinelog.reckon.trade;

import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.util.List;

/**
 * The mass at completion, forecast from weighings as the work went on: {@code mass-growth}.
 *
 * <p>The straight line of least squares through the weighings is followed from the last of them to
 * the end of the work. Common practice, no source.
 */
final class MassGrowth {

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "mass-growth",
              "Mass forecast at completion",
              List.of(
                  Parameter.table("weighings", "in the order of the work", "done", "mass"),
                  Parameter.quantity("budget", "for the mass at completion", Unit.KILOGRAM).or("")),
              MassGrowth::of)
          .yielding(
              "forecast", "growth.trade",
              "margin", "growth.trade.margin");

  private MassGrowth() {}

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    Columns columns = new Columns("weighings", inputs.table("weighings"));
    double[] done = columns.numbers("done", Unit.ONE);
    double[] mass = columns.numbers("mass", Unit.KILOGRAM);
    CurveArea.requireRising(columns, done);
    int last = done.length - 1;
    if (done[0] < 0 || done[last] > 1) {
      throw columns.at(
          done[0] < 0 ? 0 : last,
          "A share of the work done lies outside 0 to 100 %.",
          "Write the share of the whole work that was done, such as 40 %.");
    }
    double forecast = mass[last] + slope(done, mass) * (1 - done[last]);
    Unit unit = columns.unit("mass");
    YieldList yields = new YieldList();
    yields.add(
        "forecast",
        "growth.trade",
        Si.show(forecast, Unit.KILOGRAM, unit),
        YieldList.worked(
            "{0} + {1} × (1 − {2})",
            Si.show(mass[last], Unit.KILOGRAM, unit),
            Si.show(slope(done, mass), Unit.KILOGRAM, unit),
            Si.percent(done[last])));
    if (inputs.findQuantity("budget").isPresent()) {
      double budget = Si.positive(inputs, "budget", Unit.KILOGRAM);
      yields.add(
          "margin",
          "growth.trade.margin",
          Si.show(budget - forecast, Unit.KILOGRAM, unit),
          YieldList.worked(
              "{0} − {1}",
              Si.show(budget, Unit.KILOGRAM, unit), Si.show(forecast, Unit.KILOGRAM, unit)));
    }
    return yields.list();
  }

  private static double slope(double[] x, double[] y) {
    double sx = 0;
    double sy = 0;
    for (int i = 0; i < x.length; i++) {
      sx += x[i] / x.length;
      sy += y[i] / x.length;
    }
    double up = 0;
    double across = 0;
    for (int i = 0; i < x.length; i++) {
      up += (x[i] - sx) * (y[i] - sy);
      across += (x[i] - sx) * (x[i] - sx);
    }
    return up / across;
  }
}
