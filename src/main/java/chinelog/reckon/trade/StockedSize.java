package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.List;

/**
 * The stocked size nearest to what the model wants, and what it stands for at full size: {@code
 * stocked-size}. Of two sizes equally near, the smaller.
 */
final class StockedSize {

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "stocked-size",
              "The nearest stocked size",
              List.of(
                  Parameter.quantity("wanted", "the size on the model", Unit.METRE),
                  Parameter.table("sizes", "what the shop keeps", "size"),
                  Parameter.quantity("scale", "how many times smaller the model is", Unit.ONE)
                      .or("no full size")),
              StockedSize::of)
          .yielding(
              "size", "stocked.size",
              "error", "stocked.error",
              "error_share", "stocked.share",
              "full_size", "stocked.full",
              "full_error", "stocked.full.error");

  private StockedSize() {}

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    double wanted = Si.positive(inputs, "wanted", Unit.METRE);
    Columns columns = new Columns("sizes", inputs.table("sizes"));
    double[] sizes = columns.numbers("size", Unit.METRE);
    double best = Double.NaN;
    for (int i = 0; i < sizes.length; i++) {
      if (sizes[i] <= 0) {
        throw columns.at(i, "A size is not above zero.", "Put the size right.");
      }
      double off = Math.abs(sizes[i] - wanted);
      double least = Math.abs(best - wanted);
      if (Double.isNaN(best) || off < least || (off == least && sizes[i] < best)) {
        best = sizes[i];
      }
    }
    Unit unit = columns.unit("size");
    Quantity asked = inputs.quantity("wanted");
    YieldList yields = new YieldList();
    yields.add(
        "size",
        Message.of("stocked.size"),
        Si.show(best, Unit.METRE, unit),
        Message.of("stocked.size.how"));
    yields.add(
        "error",
        Message.of("stocked.error"),
        Si.show(best - wanted, Unit.METRE, asked.unit()),
        Message.of("stocked.error.how"),
        YieldList.worked("{0} − {1}", Si.show(best, Unit.METRE, unit), asked));
    yields.add(
        "error_share",
        Message.of("stocked.share"),
        Si.percent(best / wanted - 1),
        Message.of("stocked.share.how"),
        YieldList.worked("{0} ÷ {1} − 1", Si.show(best, Unit.METRE, unit), asked));
    if (inputs.findQuantity("scale").isPresent()) {
      double scale = Si.positive(inputs, "scale", Unit.ONE);
      yields.add(
          "full_size",
          Message.of("stocked.full"),
          Si.show(best * scale, Unit.METRE, asked.unit()),
          Message.of("stocked.full.how"),
          YieldList.worked("{0} × {1}", Si.show(best, Unit.METRE, unit), Si.number(scale)));
      yields.add(
          "full_error",
          Message.of("stocked.full.error"),
          Si.show((best - wanted) * scale, Unit.METRE, asked.unit()),
          Message.of("stocked.full.error.how"),
          YieldList.worked(
              "{0} × {1}", Si.show(best - wanted, Unit.METRE, asked.unit()), Si.number(scale)));
    }
    return yields.list();
  }
}
