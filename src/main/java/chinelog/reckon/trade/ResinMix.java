package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;

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
      String method = "The pot life times the pace is the most that can be mixed at once.";
      yields.add("batches", "Batches to mix", Quantity.of(batches, Unit.ONE), method);
      yields.add("batch", "Mass of each batch", Laminate.grams(mixed / batches), method);
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
    String method =
        byVolume
            ? "A ratio by volume, a : b, is a ρa : b ρb by mass."
            : "The ratio by mass as given.";
    yields.add(
        "hardener_per_100", "Hardener to 100 of resin by mass", Si.number(100 * perMass), method);
    double resinMass = mixed / (1 + perMass);
    yields.add("mix_resin_mass", "Resin to pour", Laminate.grams(resinMass), method);
    yields.add(
        "mix_hardener_mass", "Hardener to pour", Laminate.grams(resinMass * perMass), method);
    if (dense) {
      Unit millilitres = Si.unit("mL");
      yields.add(
          "mix_resin_volume",
          "Resin to pour, by volume",
          Si.show(resinMass / resinDensity, Si.M3, millilitres),
          "Its mass over its density. " + method);
      yields.add(
          "mix_hardener_volume",
          "Hardener to pour, by volume",
          Si.show(resinMass * perMass / hardenerDensity, Si.M3, millilitres),
          "Its mass over its density. " + method);
    }
  }
}
