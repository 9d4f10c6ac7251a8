package chinelog.desk.sheets;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;

/**
 * Turns pixels of a sheet's picture into true lengths, along and up the sheet.
 *
 * @param acrossPerPx true length of one pixel along, in {@code unit}
 * @param upPerPx true length of one pixel up, in {@code unit}
 * @param relativeDoubt of both at their worst, such as 0.002
 * @param unit that the maker gave true lengths in, such as {@code mm}
 */
record Scale(double acrossPerPx, double upPerPx, double relativeDoubt, String unit) {

  /** A click lies within half a pixel of what it was meant for; both ends together, within one. */
  static final double CLICKS_PX = 1;

  private static final double DEGREES = 180 / Math.PI;

  /**
   * From what {@code scan-scale} found.
   *
   * @param factorX true length by length on the paper, along
   * @param factorY the same up
   * @param mmPerPx millimetres of paper for one pixel
   */
  static Scale of(Quantity factorX, Quantity factorY, double mmPerPx, String unit)
      throws QuantityException {
    double perMm = Quantity.of(1, Unit.MILLIMETRE).doubleIn(Unit.parse(unit));
    return new Scale(
        factorX.doubleIn(Unit.ONE) * mmPerPx * perMm,
        factorY.doubleIn(Unit.ONE) * mmPerPx * perMm,
        Math.max(relative(factorX), relative(factorY)),
        unit);
  }

  private static double relative(Quantity factor) {
    BigDecimal tolerance = factor.tolerance();
    return tolerance == null ? 0 : tolerance.doubleValue() / Math.abs(factor.value().doubleValue());
  }

  Measured length(Point from, Point to) {
    double length = distance(from, to);
    double click = CLICKS_PX * Math.max(acrossPerPx, upPerPx);
    return new Measured(length, length * relativeDoubt + click, unit);
  }

  /** The angle at {@code corner} between two others, in degrees. */
  Measured angle(Point one, Point corner, Point other) {
    double ax = (one.x() - corner.x()) * acrossPerPx;
    double ay = (one.y() - corner.y()) * upPerPx;
    double bx = (other.x() - corner.x()) * acrossPerPx;
    double by = (other.y() - corner.y()) * upPerPx;
    double angle = Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
    double click = CLICKS_PX * Math.max(acrossPerPx, upPerPx);
    double doubt = click / Math.hypot(ax, ay) + click / Math.hypot(bx, by) + relativeDoubt;
    return new Measured(angle * DEGREES, doubt * DEGREES, "deg");
  }

  double distance(Point from, Point to) {
    return Math.hypot((to.x() - from.x()) * acrossPerPx, (to.y() - from.y()) * upPerPx);
  }
}
