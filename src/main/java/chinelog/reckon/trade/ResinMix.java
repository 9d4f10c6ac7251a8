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
      yields.add("batches", Message.of("mix.batches"), Quantity.of(batches, Unit.ONE), method);
      yields.add("batch", Message.of("mix.batch"), Laminate.grams(mixed / batches), method);
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
    yields.add("hardener_per_100", Message.of("mix.per.hundred"), Si.number(100 * perMass), method);
    double resinMass = mixed / (1 + perMass);
    yields.add("mix_resin_mass", Message.of("mix.resin"), Laminate.grams(resinMass), method);
    yields.add(
        "mix_hardener_mass",
        Message.of("mix.hardener"),
        Laminate.grams(resinMass * perMass),
        method);
    if (dense) {
      Unit millilitres = Si.unit("mL");
      yields.add(
          "mix_resin_volume",
          Message.of("mix.resin.volume"),
          Si.show(resinMass / resinDensity, Si.M3, millilitres),
          Message.of("mass.over.density"),
          method);
      yields.add(
          "mix_hardener_volume",
          Message.of("mix.hardener.volume"),
          Si.show(resinMass * perMass / hardenerDensity, Si.M3, millilitres),
          Message.of("mass.over.density"),
          method);
    }
  }
}
