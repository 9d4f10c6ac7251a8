package chinelog.reckon.trade;

import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.List;

/**
 * Wood's density and movement with its moisture: {@code wood}.
 *
 * <p>Density = 1000 G (1 + M/100) kg/m³ where G is the specific gravity by the volume at the
 * moisture content M; where G is oven-dry, G/(1 + 0.009 G M) takes its place and 62.4 lb/ft³ that
 * of water. Shrinkage from green to M below 30 % = S0 (30 − M)/30; movement between two contents
 * from 6 to 14 % = D C (Mf − Mi). USDA Wood Handbook, FPL-GTR-190 (2010), chapters 4 and 13.
 */
final class Wood {

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "wood",
              "Density and movement of wood",
              List.of(
                  Parameter.quantity("gravity", "specific gravity", Unit.ONE).or(""),
                  Parameter.word("basis", "the volume it is told by", "as-is", "oven-dry")
                      .or("as-is"),
                  Parameter.quantity("moisture", "content, by mass of the dry wood", Unit.ONE)
                      .or("12 %"),
                  Parameter.quantity("shrinkage", "from green to oven-dry", Unit.ONE).or(""),
                  Parameter.quantity("size", "of the piece across the grain", Unit.METRE).or(""),
                  Parameter.quantity("coefficient", "of movement for 1 % of moisture", Unit.ONE)
                      .or(""),
                  Parameter.quantity("moisture_after", "content later", Unit.ONE).or("")),
              Wood::of)
          .yielding(
              "density", "wood.density",
              "shrinkage", "wood.shrinkage",
              "movement", "wood.movement");

  private Wood() {}

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    double moisture = Si.share(inputs, "moisture", 0.12);
    YieldList yields = new YieldList();
    if (inputs.findQuantity("gravity").isPresent()) {
      double gravity = Si.positive(inputs, "gravity", Unit.ONE);
      if (inputs.word("basis", "as-is").equals("oven-dry")) {
        double density = 62.4 * gravity / (1 + 0.009 * gravity * moisture * 100) * (1 + moisture);
        yields.add(
            "density",
            Message.of("wood.density"),
            Si.show(density, Si.unit("lb/ft³"), Si.KG_M3),
            Message.of("wood.density.dry.how"),
            YieldList.worked(
                "{0} × {1} ÷ (1 + 0.009 × {1} × {2}) × (1 + {3})",
                Si.show(62.4, Si.unit("lb/ft³"), Si.unit("lb/ft³")),
                Si.number(gravity),
                Si.number(moisture * 100),
                Si.percent(moisture)));
      } else {
        yields.add(
            "density",
            Message.of("wood.density"),
            Si.show(1000 * gravity * (1 + moisture), Si.KG_M3, Si.KG_M3),
            Message.of("wood.density.how"),
            YieldList.worked(
                "{0} × {1} × (1 + {2})",
                Si.show(1000, Si.KG_M3, Si.KG_M3), Si.number(gravity), Si.percent(moisture)));
      }
    }
    if (inputs.findQuantity("shrinkage").isPresent()) {
      if (moisture > 0.3) {
        throw new TradeException(
            "moisture", "Above 30 % of moisture wood does not shrink.", "Give 30 % or less.");
      }
      yields.add(
          "shrinkage",
          Message.of("wood.shrinkage"),
          Si.percent(Si.share(inputs, "shrinkage", 0) * (0.3 - moisture) / 0.3),
          Message.of("wood.shrinkage.how"),
          YieldList.worked(
              "{0} × (30 − {1}) ÷ 30",
              Si.percent(Si.share(inputs, "shrinkage", 0)), Si.number(moisture * 100)));
    }
    movement(yields, inputs, moisture);
    if (yields.list().isEmpty()) {
      throw new TradeException(
          "gravity",
          "There is nothing to reckon about this wood.",
          "Give gravity, shrinkage, or size with coefficient and moisture_after.");
    }
    return yields.list();
  }

  private static void movement(YieldList yields, Inputs inputs, double moisture)
      throws TradeException, QuantityException {
    if (inputs.findQuantity("coefficient").isEmpty()) {
      return;
    }
    double after = Si.positive(inputs, "moisture_after", Unit.ONE);
    for (double m : new double[] {moisture, after}) {
      if (m < 0.06 - 1e-12 || m > 0.14 + 1e-12) {
        throw new TradeException(
            m == after ? "moisture_after" : "moisture",
            "The coefficient holds from 6 to 14 % of moisture only.",
            "Give a moisture within it.");
      }
    }
    double change =
        Si.positive(inputs, "size", Unit.METRE)
            * Si.positive(inputs, "coefficient", Unit.ONE)
            * 100
            * (after - moisture);
    yields.add(
        "movement",
        Message.of("wood.movement"),
        Si.show(change, Unit.METRE, inputs.quantity("size").unit()),
        Message.of("wood.movement.how"),
        YieldList.worked(
            "{0} × {1} × ({2} − {3})",
            inputs.quantity("size").withoutTolerance(),
            Si.number(Si.positive(inputs, "coefficient", Unit.ONE)),
            Si.number(after * 100),
            Si.number(moisture * 100)));
  }
}
