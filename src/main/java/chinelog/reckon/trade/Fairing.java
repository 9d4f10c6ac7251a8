package chinelog.reckon.trade;

import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.List;

/**
 * What fairing takes off and puts on: {@code fairing}.
 *
 * <p>Wood lost = area × depth sanded × density; filler put on = area × share filled × depth ÷ (1 −
 * sanded off again). Common practice, no source; the arithmetic is exact.
 */
final class Fairing {

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "fairing",
              "What fairing takes off and filler puts on",
              List.of(
                  Parameter.quantity("area", "of the skin", Si.M2),
                  Parameter.quantity("sanded", "depth of wood taken off", Unit.METRE),
                  Parameter.quantity("wood_density", "of the planking", Si.KG_M3),
                  Parameter.quantity("thickness", "of the planking as laid", Unit.METRE).or(""),
                  Parameter.quantity("filled", "share of the skin that is filled", Unit.ONE)
                      .or("0 %"),
                  Parameter.quantity("filler_depth", "mean depth that stays", Unit.METRE).or("0"),
                  Parameter.quantity("filler_density", "once hard", Si.KG_M3).or(""),
                  Parameter.quantity(
                          "filler_loss", "share of the filler sanded off again", Unit.ONE)
                      .or("50 %")
                      .recalling()),
              Fairing::of)
          .yielding(
              "left", "fairing.left",
              "wood_lost", "fairing.lost",
              "filler", "fairing.filler",
              "filler_mass", "fairing.filler.mass",
              "change", "fairing.change");

  private Fairing() {}

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    double area = Si.positive(inputs, "area", Si.M2);
    double sanded = Si.positive(inputs, "sanded", Unit.METRE);
    double wood = Si.positive(inputs, "wood_density", Si.KG_M3);
    ShopUnits units = ShopUnits.of(inputs.quantity("sanded").unit());
    double lost = area * sanded * wood;
    YieldList yields = new YieldList();
    if (inputs.findQuantity("thickness").isPresent()) {
      double thick = Si.positive(inputs, "thickness", Unit.METRE);
      if (sanded >= thick) {
        throw new TradeException(
            "sanded", "Nothing is left of the planking.", "Give less than its thickness.");
      }
      yields.from("thickness", "sanded");
      yields.add(
          "left",
          Message.of("fairing.left"),
          units.length(thick - sanded),
          YieldList.worked("{0} − {1}", units.length(thick), units.length(sanded)));
    }
    yields.from("area", "sanded", "wood_density");
    yields.add(
        "wood_lost",
        Message.of("fairing.lost"),
        units.mass(lost),
        YieldList.worked(
            "{0} × {1} × {2}", units.area(area), units.length(sanded), units.density(wood)));
    if (inputs.findQuantity("filler_density").isEmpty()) {
      return yields.list();
    }
    double filler = Si.positive(inputs, "filler_density", Si.KG_M3);
    double depth = Si.positive(inputs, "filler_depth", Unit.METRE);
    double filled = Si.positive(inputs, "filled", Unit.ONE);
    if (filled > 1) {
      throw new TradeException("filled", "More than the skin is filled.", "Give at most 100 %.");
    }
    double kept = 1 - Si.share(inputs, "filler_loss", 0.5);
    double stays = area * filled * depth;
    yields.from("area", "filled", "filler_depth", "filler_loss");
    yields.add(
        "filler",
        Message.of("fairing.filler"),
        Si.show(stays / kept, Si.M3, Si.unit("mL")),
        YieldList.worked(
            "{0} × {1} × {2} ÷ {3}",
            units.area(area), Si.percent(filled), units.length(depth), Si.percent(kept)));
    yields.from("area", "filled", "filler_depth", "filler_density");
    yields.add(
        "filler_mass",
        Message.of("fairing.filler.mass"),
        units.mass(stays * filler),
        YieldList.worked("{0} × {1}", units.volume(stays), units.density(filler)));
    yields.from("area", "sanded", "wood_density", "filled", "filler_depth", "filler_density");
    yields.add(
        "change",
        Message.of("fairing.change"),
        units.mass(stays * filler - lost),
        YieldList.worked("{0} − {1}", units.mass(stays * filler), units.mass(lost)));
    return yields.list();
  }
}
