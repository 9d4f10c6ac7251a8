package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import java.util.List;

/**
 * A price and what it rests on. Money is rounded to the currency's smallest coin in each line,
 * halves upward; sums are of the rounded lines, so that the page adds up.
 *
 * @param lines one for each stage, in the request's order
 * @param hours expected in all
 * @param spread standard deviation of the hours
 * @param labour hours times rate
 * @param overhead on labour and material
 * @param margin net less labour, material and overhead
 * @param net price before tax
 * @param total price with tax
 * @param low the total if the hours fall two standard deviations short of what is expected
 * @param high the total if they exceed it by as much
 * @param restsOn sentences for the reader: what was taken from where, and the formulas
 */
public record Quotation(
    String title,
    List<Line> lines,
    Quantity hours,
    Quantity spread,
    Quantity labour,
    Quantity material,
    Quantity overhead,
    Quantity margin,
    Quantity net,
    Quantity tax,
    Quantity total,
    Quantity low,
    Quantity high,
    List<String> restsOn) {

  public Quotation {
    lines = List.copyOf(lines);
    restsOn = List.copyOf(restsOn);
  }

  /**
   * One stage.
   *
   * @param basis how its hours came about, such as "18 h × 1.29 by length × 0.9 learnt"
   */
  public record Line(
      String title,
      Quantity hours,
      Quantity spread,
      Quantity labour,
      Quantity material,
      String basis) {}
}
