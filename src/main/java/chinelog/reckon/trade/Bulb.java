package chinelog.reckon.trade;

import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.List;

/**
 * A bulb of ballast as a body of revolution of a published symmetric section: {@code bulb}.
 *
 * <p>V = k τ² l³ with τ = diameter/length and k from {@link FoilSection}; for a wanted mass m, l =
 * (m/(ρ k τ²))^⅓. What hangs in the water carries its own buoyancy, so that a wanted net mass n
 * takes m = n/(1 − ρw/ρ).
 */
final class Bulb {

  private static final int[] STATIONS = {0, 5, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100};

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "bulb",
              "A bulb of ballast for a wanted mass",
              List.of(
                  Parameter.quantity("mass", "of the bulb", Unit.KILOGRAM).or("by net"),
                  Parameter.quantity(
                          "net",
                          "what it shall weigh in the water, in place of mass",
                          Unit.KILOGRAM)
                      .or(""),
                  Parameter.quantity("fineness", "length over diameter", Unit.ONE),
                  Parameter.quantity("density", "of what it is cast of", Si.KG_M3),
                  Parameter.quantity("water_density", "of the water", Si.KG_M3)
                      .or("999.1 kg/m³, fresh water at 15 °C"),
                  Parameter.quantity("x", "of its nose, from the aft end", Unit.METRE).or("0"),
                  Parameter.quantity("z", "of its axis above the base line", Unit.METRE).or("0")),
              Bulb::of)
          .yielding(
              "length", "bulb.length",
              "diameter", "bulb.diameter",
              "diameter_…", "bulb.diameter.at",
              "volume", "foil.volume",
              "x", "foil.x",
              "z", "foil.z",
              "skin", "foil.skin",
              "displacement", "foil.displacement",
              "mass", "foil.mass",
              "net", "foil.net")
          .drawing(Bulb::draw);

  private Bulb() {}

  private static List<Part> draw(Inputs inputs) throws TradeException, QuantityException {
    double fineness = fineness(inputs);
    double length = length(mass(inputs) / Si.positive(inputs, "density", Si.KG_M3), fineness);
    return List.of(FoilPattern.bulb(length, length / fineness, STATIONS));
  }

  private static double mass(Inputs inputs) throws TradeException, QuantityException {
    double density = Si.positive(inputs, "density", Si.KG_M3);
    double water = Si.positive(inputs, "water_density", Si.KG_M3, 999.1);
    boolean byNet = inputs.findQuantity("net").isPresent();
    if (byNet == inputs.findQuantity("mass").isPresent()) {
      throw new TradeException(
          byNet ? "mass" : "net",
          byNet ? "Mass and net are both given." : "It is not said how heavy it shall be.",
          "Give either mass or net.");
    }
    if (byNet && density <= water) {
      throw new TradeException("density", "It floats.", "Give a density above the water's.");
    }
    return byNet
        ? Si.positive(inputs, "net", Unit.KILOGRAM) / (1 - water / density)
        : Si.positive(inputs, "mass", Unit.KILOGRAM);
  }

  private static double fineness(Inputs inputs) throws TradeException, QuantityException {
    double fineness = Si.positive(inputs, "fineness", Unit.ONE);
    if (fineness < 2) {
      throw new TradeException(
          "fineness",
          "A bulb shorter than twice its diameter is not in the family.",
          "Give 2 or more.");
    }
    return fineness;
  }

  private static double length(double volume, double fineness) {
    return Math.cbrt(volume * fineness * fineness / FoilSection.volume());
  }

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    double density = Si.positive(inputs, "density", Si.KG_M3);
    double fineness = fineness(inputs);
    double mass = mass(inputs);
    String by = inputs.findQuantity("net").isPresent() ? "net" : "mass";
    ShopUnits units = ShopUnits.of(Si.unit(unit(inputs.quantity(by).unit())));
    double volume = mass / density;
    double k = FoilSection.volume();
    double length = length(volume, fineness);
    String[] form = {by, "fineness", "density", "water_density"};
    YieldList yields = new YieldList().from(form);
    yields.add(
        "length",
        Message.of("bulb.length"),
        units.length(length),
        YieldList.worked(
            "∛(V f² ÷ k) = ∛({0} × {1}² ÷ {2})",
            units.volume(volume), Si.number(fineness), Si.number(k)),
        FoilSection.SOURCE);
    yields.add(
        "diameter",
        Message.of("bulb.diameter"),
        units.length(length / fineness),
        YieldList.worked("{0} ÷ {1}", units.length(length), Si.number(fineness)));
    for (int at : STATIONS) {
      yields.add(
          "diameter_" + at,
          Message.of("bulb.diameter.at", at),
          units.length(2 * FoilSection.half(at / 100.0) * length / fineness),
          FoilSection.worked(units.length(length / fineness), at / 100.0),
          FoilSection.SOURCE);
    }
    yields.add(
        "volume",
        Message.of("foil.volume"),
        units.volume(volume),
        YieldList.worked("{0} ÷ {1}", units.mass(mass), units.density(density)));
    yields.add(
        "x",
        Message.of("foil.x"),
        units.length(Si.value(inputs, "x", Unit.METRE, 0) - FoilSection.bodyCentre() * length),
        Message.of("foil.centre.how", Si.number(FoilSection.bodyCentre())),
        YieldList.worked(
            "{0} − {1} × {2}",
            units.length(Si.value(inputs, "x", Unit.METRE, 0)),
            Si.number(FoilSection.bodyCentre()),
            units.length(length)));
    yields.add(
        "z",
        Message.of("foil.z"),
        units.length(Si.value(inputs, "z", Unit.METRE, 0)),
        Message.of("bulb.axis"),
        YieldList.worked("{0}", units.length(Si.value(inputs, "z", Unit.METRE, 0))));
    yields.add(
        "skin",
        "foil.skin",
        units.area(FoilSection.skin(1 / fineness) * length * length),
        YieldList.worked(
            "{0} × ({1})²", Si.number(FoilSection.skin(1 / fineness)), units.side(length)));
    Foil.masses(yields, inputs, units, volume, by, "fineness");
    return yields.list();
  }

  /** Whoever weighs in ounces measures in inches. */
  private static String unit(Unit mass) {
    return switch (mass.symbol()) {
      case "oz", "lb" -> "in";
      default -> "mm";
    };
  }
}
