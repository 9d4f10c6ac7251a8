package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.List;
import java.util.stream.Stream;

/**
 * The area under a curve of ordinates, such as a waterplane's half-breadths: {@code curve}.
 *
 * <p>Area = ∫ y dx, centroid = ∫ x y dx / ∫ y dx. Units are the table's own, multiplied.
 */
final class CurveArea {

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "curve",
              "The area and centre of a curve of ordinates",
              List.of(
                  Parameter.table("ordinates", "the curve", "x", "y"),
                  Parameter.word("rule", "how to integrate", Rule.WORDS).or("by-spacing"),
                  Parameter.quantity("sides", "2 where y is a half-breadth", Unit.ONE).or("1")),
              CurveArea::reckon)
          .yielding(
              "area", "curve.area",
              "second_moment", "curve.second",
              "centre", "curve.centre");

  private CurveArea() {}

  private static List<Yield> reckon(Inputs inputs) throws TradeException, QuantityException {
    Columns columns = new Columns("ordinates", inputs.table("ordinates"));
    Unit across = columns.unit("x");
    Unit up = columns.unit("y");
    double[] x = columns.numbers("x", across);
    double[] y = columns.numbers("y", up);
    requireRising(columns, x);
    Rule rule = Rule.named(inputs.word("rule", "by-spacing"), x);
    double sides = Si.positive(inputs, "sides", Unit.ONE, 1);
    double area = sides * rule.of(y);
    double moment = sides * rule.moment(y, 1);
    Unit areaUnit = up.equals(across) ? across.power(2) : up.times(across);
    Message by = Message.of("curve.by", rule.said());
    YieldList yields = new YieldList();
    Quantity whole = Si.show(area, areaUnit, areaUnit);
    Object[] times = {" × ", Si.number(sides)};
    yields.add(
        "area",
        Message.of(title(areaUnit)),
        whole,
        by,
        rule.terms("Σ m y = ", y, 0, across, up).end(prepend(")", times)));
    Unit secondUnit = up.equals(across) ? across.power(4) : up.times(across.power(3));
    yields.add(
        "second_moment",
        "curve.second",
        Si.show(sides * rule.moment(y, 2), secondUnit, secondUnit),
        by,
        rule.terms("Σ m x² y = ", y, 2, across, up).end(prepend(")", times)));
    if (area != 0) {
      Quantity centre = Si.show(moment / area, across, across);
      yields.add(
          "centre",
          "curve.centre",
          centre,
          by,
          rule.terms("Σ m x y ÷ A = ", y, 1, across, up)
              .end(") × ", Si.number(sides), " ÷ ", whole));
    }
    return yields.list();
  }

  private static Object[] prepend(String first, Object[] rest) {
    return Stream.concat(Stream.of(first), Stream.of(rest)).toArray();
  }

  private static String title(Unit unit) {
    return unit.isCompatible(Si.M2)
        ? "curve.area"
        : unit.isCompatible(Si.M3) ? "curve.volume" : "curve.other";
  }

  /** Refuses fewer than two abscissae, and any that is not above the one before. */
  static void requireRising(Columns columns, double[] x) throws TradeException {
    if (x.length < 2) {
      throw columns.at(0, "The table has only one row.", "Give at least two rows.");
    }
    for (int i = 1; i < x.length; i++) {
      if (x[i] == x[i - 1]) {
        throw columns.at(
            i, "This place is there twice.", "Take one of the two rows out of the table.");
      }
      if (x[i] < x[i - 1]) {
        throw columns.at(
            i,
            "This row comes after one that lies beyond it.",
            "Sort the rows so that x rises from each row to the next.");
      }
    }
  }
}
