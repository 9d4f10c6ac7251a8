package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;

/**
 * Resin and hardener by mass and by volume, and the batches that fit the pot life.
 *
 * <p>A ratio a : b by volume is a ρa : b ρb by mass.
 */
final class ResinMix {

  private ResinMix() {}

  static void add(YieldList yields, Inputs inputs, double mixed)
      throws TradeException, QuantityException {
    if (inputs.findQuantity("mix_resin").isPresent()
        || inputs.findQuantity("mix_hardener").isPresent()) {
      ratio(yields, inputs, mixed);
    }
    if (inputs.findQuantity("pot_life").isPresent() || inputs.findQuantity("pace").isPresent()) {
      double batch =
          Si.positive(inputs, "pot_life", Si.unit("s"))
              * Si.positive(inputs, "pace", Si.unit("kg/s"));
      long batches = Planking.ceil(mixed / batch);
      Message method = Message.of("mix.batches.how");
      yields.add(
          "batches",
          Message.of("mix.batches"),
          Quantity.of(batches, Unit.ONE),
          method,
          YieldList.worked(
              "⌈{0} ÷ ({1} × {2})⌉",
              Laminate.grams(mixed), inputs.quantity("pot_life"), inputs.quantity("pace")));
      yields.add(
          "batch",
          Message.of("mix.batch"),
          Laminate.grams(mixed / batches),
          method,
          YieldList.worked("{0} ÷ {1}", Laminate.grams(mixed), Si.number(batches)));
    }
  }

  private static void ratio(YieldList yields, Inputs inputs, double mixed)
      throws TradeException, QuantityException {
    double resin = Si.positive(inputs, "mix_resin", Unit.ONE);
    double hardener = Si.positive(inputs, "mix_hardener", Unit.ONE);
    boolean byVolume = inputs.word("mix_by", "mass").equals("volume");
    boolean dense =
        inputs.findQuantity("liquid_resin_density").isPresent()
            && inputs.findQuantity("liquid_hardener_density").isPresent();
    double resinDensity = 1;
    double hardenerDensity = 1;
    if (byVolume || dense) {
      resinDensity = Si.positive(inputs, "liquid_resin_density", Si.KG_M3);
      hardenerDensity = Si.positive(inputs, "liquid_hardener_density", Si.KG_M3);
    }
    double perMass =
        byVolume ? hardener * hardenerDensity / (resin * resinDensity) : hardener / resin;
    Message method = Message.of(byVolume ? "mix.by.volume" : "mix.by.mass");
    yields.add(
        "hardener_per_100",
        Message.of("mix.per.hundred"),
        Si.number(100 * perMass),
        method,
        byVolume
            ? YieldList.worked(
                "100 × {0} × {1} ÷ ({2} × {3})",
                Si.number(hardener),
                inputs.quantity("liquid_hardener_density"),
                Si.number(resin),
                inputs.quantity("liquid_resin_density"))
            : YieldList.worked("100 × {0} ÷ {1}", Si.number(hardener), Si.number(resin)));
    double resinMass = mixed / (1 + perMass);
    Quantity resinPart = Laminate.grams(resinMass);
    Quantity hardenerPart = Laminate.grams(resinMass * perMass);
    yields.add(
        "mix_resin_mass",
        Message.of("mix.resin"),
        resinPart,
        method,
        YieldList.worked(
            "{0} × 100 ÷ (100 + {1})", Laminate.grams(mixed), Si.number(100 * perMass)));
    yields.add(
        "mix_hardener_mass",
        Message.of("mix.hardener"),
        hardenerPart,
        method,
        YieldList.worked("{0} − {1}", Laminate.grams(mixed), resinPart));
    if (dense) {
      Unit millilitres = Si.unit("mL");
      yields.add(
          "mix_resin_volume",
          Message.of("mix.resin.volume"),
          Si.show(resinMass / resinDensity, Si.M3, millilitres),
          Message.of("mass.over.density"),
          YieldList.worked("{0} ÷ {1}", resinPart, inputs.quantity("liquid_resin_density")),
          method);
      yields.add(
          "mix_hardener_volume",
          Message.of("mix.hardener.volume"),
          Si.show(resinMass * perMass / hardenerDensity, Si.M3, millilitres),
          Message.of("mass.over.density"),
          YieldList.worked("{0} ÷ {1}", hardenerPart, inputs.quantity("liquid_hardener_density")),
          method);
    }
  }
}
