package chinelog.reckon.trade;

import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;

/**
 * Area and centre of a polygon by the shoelace rule.
 *
 * @param area never negative, m²
 */
record Polygon(double area, double x, double z) {

  /** Of corners in their order round it. */
  static Polygon of(double[] x, double[] z) {
    double twice = 0;
    double mx = 0;
    double mz = 0;
    for (int i = 0; i < x.length; i++) {
      int j = (i + 1) % x.length;
      double cross = (x[i] - x[0]) * (z[j] - z[0]) - (x[j] - x[0]) * (z[i] - z[0]);
      twice += cross;
      mx += cross * (x[i] + x[j] - 2 * x[0]);
      mz += cross * (z[i] + z[j] - 2 * z[0]);
    }
    return new Polygon(Math.abs(twice) / 2, x[0] + mx / (3 * twice), z[0] + mz / (3 * twice));
  }

  static Polygon read(String input, Columns columns) throws TradeException, QuantityException {
    if (columns.rows() < 3) {
      throw columns.at(0, "Fewer than three corners enclose nothing.", "Give three at least.");
    }
    Polygon polygon = of(columns.numbers("x", Unit.METRE), columns.numbers("z", Unit.METRE));
    if (!(polygon.area > 0)) {
      throw new TradeException(
          input, "The corners lie in one line.", "Give them in their order round the outline.");
    }
    return polygon;
  }
}
