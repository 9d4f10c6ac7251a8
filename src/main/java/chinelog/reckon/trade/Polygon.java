package chinelog.reckon.trade;

import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;

/**
 * Area and centre of a polygon by the shoelace rule.
 *
 * @param area never negative, m²
 * @param x of its centre, m
 * @param z of its centre, m
 * @param xs of its corners, m
 * @param zs of its corners, m
 */
record Polygon(double area, double x, double z, double[] xs, double[] zs) {

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
    return new Polygon(Math.abs(twice) / 2, x[0] + mx / (3 * twice), z[0] + mz / (3 * twice), x, z);
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

  /** Twice the area of the triangle from the first corner to one side, as the outline turns. */
  private double cross(int i) {
    int j = (i + 1) % xs.length;
    return (xs[i] - xs[0]) * (zs[j] - zs[0]) - (xs[j] - xs[0]) * (zs[i] - zs[0]);
  }

  private double turn() {
    double twice = 0;
    for (int i = 0; i < xs.length; i++) {
      twice += cross(i);
    }
    return Math.signum(twice);
  }

  /** Its area from its corners, each measured from the first. */
  Message areaWorked(ShopUnits units) throws TradeException {
    Terms terms = new Terms("½ × (");
    for (int i = 1; i < xs.length - 1; i++) {
      double x = turn() * (xs[i] - xs[0]);
      double next = turn() * (xs[i + 1] - xs[0]);
      terms.add(units.side(x), " × ", units.side(zs[i + 1] - zs[0]));
      terms.add(units.side(-next), " × ", units.side(zs[i] - zs[0]));
    }
    return terms.end(")");
  }

  /** Where its centre lies along x, or up z: triangles from the first corner by their areas. */
  Message centreWorked(ShopUnits units, boolean up) throws TradeException {
    double[] along = up ? zs : xs;
    Terms terms = new Terms(units.side(along[0]), " + (");
    for (int i = 1; i < xs.length - 1; i++) {
      double sum = along[i] + along[i + 1] - 2 * along[0];
      terms.add(units.power(turn() * cross(i), 2), " × ", units.side(sum));
    }
    return terms.end(") ÷ (6 × ", units.area(area), ")");
  }
}
