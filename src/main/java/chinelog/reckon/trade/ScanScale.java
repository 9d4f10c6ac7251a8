package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.List;

/**
 * What a scanned sheet must be multiplied by, along and up, and how far it is out of square: {@code
 * scan-scale}.
 *
 * <p>Factor = true length / length on the scan. With a rectangle of a × b on the scan whose
 * diagonals are p and q, its corner is off a right angle by asin((p² − q²)/(4ab)). The tolerances
 * of the lengths are carried through.
 */
final class ScanScale {

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "scan-scale",
              "The scale of a scanned sheet",
              List.of(
                  Parameter.quantity(
                      "true_x", "a length along the sheet, as it should be", Unit.METRE),
                  Parameter.quantity("scan_x", "the same on the scan", Unit.METRE),
                  Parameter.quantity("true_y", "a length up the sheet, as it should be", Unit.METRE)
                      .or("the sheet stretched evenly"),
                  Parameter.quantity("scan_y", "the same on the scan", Unit.METRE).or(""),
                  Parameter.quantity(
                          "diagonal_up", "from bottom left to top right, on the scan", Unit.METRE)
                      .or(""),
                  Parameter.quantity(
                          "diagonal_down", "from top left to bottom right, on the scan", Unit.METRE)
                      .or("")),
              ScanScale::of)
          .yielding(
              "factor_x", "scan.x",
              "factor_y", "scan.y",
              "stretch", "scan.longer",
              "out_of_square", "scan.square");

  private ScanScale() {}

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    YieldList yields = new YieldList();
    double x = factor(inputs, "true_x", "scan_x");
    Message method = Message.of("scan.factor.how");
    yields.add(
        "factor_x", Message.of("scan.x"), Si.number(x), method, over(inputs, "true_x", "scan_x"));
    if (inputs.findQuantity("true_y").isPresent() || inputs.findQuantity("scan_y").isPresent()) {
      double y = factor(inputs, "true_y", "scan_y");
      yields.add(
          "factor_y", Message.of("scan.y"), Si.number(y), method, over(inputs, "true_y", "scan_y"));
      yields.add(
          "stretch",
          Message.of("scan.longer"),
          Si.percent(y / x - 1),
          Message.of("scan.longer.how"),
          YieldList.worked("{0} ÷ {1} − 1", Si.number(y), Si.number(x)));
      square(yields, inputs);
    }
    return yields.list();
  }

  private static Message over(Inputs inputs, String truth, String scan) throws TradeException {
    return YieldList.worked("{0} ÷ {1}", inputs.quantity(truth), inputs.quantity(scan));
  }

  private static double factor(Inputs inputs, String truth, String scan)
      throws TradeException, QuantityException {
    return Si.positive(inputs, truth, Unit.METRE) / Si.positive(inputs, scan, Unit.METRE);
  }

  private static void square(YieldList yields, Inputs inputs)
      throws TradeException, QuantityException {
    if (inputs.findQuantity("diagonal_up").isEmpty()
        && inputs.findQuantity("diagonal_down").isEmpty()) {
      return;
    }
    double up = Si.positive(inputs, "diagonal_up", Unit.METRE);
    double down = Si.positive(inputs, "diagonal_down", Unit.METRE);
    double a = Si.positive(inputs, "scan_x", Unit.METRE);
    double b = Si.positive(inputs, "scan_y", Unit.METRE);
    double sine = (up * up - down * down) / (4 * a * b);
    if (Math.abs(sine) >= 1 || Math.max(up, down) >= a + b) {
      throw new TradeException(
          "diagonal_up",
          Sentence.of(
              "These diagonals belong to no rectangle of {0} by {1}.",
              inputs.quantity("scan_x"), inputs.quantity("scan_y")),
          "Measure the diagonals of the rectangle whose sides are scan_x and scan_y.");
    }
    Quantity angle = Si.show(Math.toDegrees(Math.asin(sine)), Si.DEGREE, Si.DEGREE);
    yields.add(
        "out_of_square",
        Message.of("scan.square"),
        angle,
        Message.of("scan.square.how"),
        YieldList.worked(
            "asin(({0} × {0} − {1} × {1}) ÷ (4 × {2} × {3}))",
            Si.show(up, Unit.METRE, Unit.MILLIMETRE),
            Si.show(down, Unit.METRE, Unit.MILLIMETRE),
            Si.show(a, Unit.METRE, Unit.MILLIMETRE),
            Si.show(b, Unit.METRE, Unit.MILLIMETRE)));
  }
}
