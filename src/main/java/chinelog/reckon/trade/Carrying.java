package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.List;

/**
 * What sail a hull can carry: {@code sail-carrying}.
 *
 * <p>Pressure p = ½ ρ C v² with ρ = 1.225 kg/m³; the wind heels by p A h cos² φ, the hull rights by
 * g Δ GM sin φ, and she lies where they are equal. Sail area over displacement = A/∇^⅔. Power to
 * carry sail = Δ GM/(A h), as in Skene's Elements of Yacht Design (Kinney, 8th edition, 1973; from
 * memory).
 */
final class Carrying {

  private static final double GRAVITY = 9.80665;
  private static final double AIR = 1.225;
  private static final Unit PASCAL = Si.unit("Pa");

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "sail-carrying",
              "Heel under sail and the power to carry it",
              List.of(
                  Parameter.quantity("area", "of the sails", Si.M2),
                  Parameter.quantity(
                      "arm",
                      "from the centre of lateral resistance up to that of effort",
                      Unit.METRE),
                  Parameter.quantity("displacement", "all up", Unit.KILOGRAM),
                  Parameter.quantity("gm", "metacentric height", Unit.METRE),
                  Parameter.quantity("wind", "its speed over the deck", Si.unit("m/s")).or(""),
                  Parameter.quantity("force_share", "of the wind's pressure that heels", Unit.ONE)
                      .or("1"),
                  Parameter.quantity("water_density", "of the water", Si.KG_M3)
                      .or("999.1 kg/m³, fresh water at 15 °C")),
              Carrying::of)
          .yielding(
              "ratio", "carrying.ratio",
              "pressure_at_1_deg", "carrying.stiff",
              "pressure", "carrying.pressure",
              "heel", "carrying.heel");

  private Carrying() {}

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    double area = Si.positive(inputs, "area", Si.M2);
    double arm = Si.positive(inputs, "arm", Unit.METRE);
    double mass = Si.positive(inputs, "displacement", Unit.KILOGRAM);
    double gm = Si.positive(inputs, "gm", Unit.METRE);
    double volume = mass / Si.positive(inputs, "water_density", Si.KG_M3, 999.1);
    ShopUnits units = ShopUnits.of(inputs.quantity("gm").unit());
    Quantity sails = Si.show(area, Si.M2, Si.M2);
    YieldList yields = new YieldList().from("area", "displacement", "water_density");
    yields.add(
        "ratio",
        Message.of("carrying.ratio"),
        Si.number(area / Math.pow(volume, 2.0 / 3)),
        YieldList.worked("A ÷ ∇^⅔ = {0} ÷ ({1})^⅔", sails, Si.show(volume, Si.M3, Si.M3)));
    double righting = GRAVITY * mass * gm;
    double heeling = area * arm;
    Quantity gravity = Si.show(GRAVITY, Si.unit("m/s²"), Si.unit("m/s²"));
    Quantity weighs = inputs.quantity("displacement").withoutTolerance();
    yields.from("area", "arm", "displacement", "gm");
    yields.add(
        "pressure_at_1_deg",
        Message.of("carrying.stiff"),
        Si.show(righting * Math.sin(Math.toRadians(1)) / heeling, PASCAL, PASCAL),
        Message.of("carrying.stiff.how"),
        YieldList.worked(
            "{0} × {1} × {2} × sin 1° ÷ ({3} × {4})",
            gravity, weighs, units.length(gm), sails, units.length(arm)));
    if (inputs.findQuantity("wind").isPresent()) {
      double wind = Si.positive(inputs, "wind", Si.unit("m/s"));
      double pressure = AIR / 2 * wind * wind * Si.positive(inputs, "force_share", Unit.ONE, 1);
      yields.from("wind", "force_share");
      yields.add(
          "pressure",
          Message.of("carrying.pressure"),
          Si.show(pressure, PASCAL, PASCAL),
          YieldList.worked(
              "½ ρ C v² = ½ × 1.225 kg/m³ × {0} × ({1})²",
              Si.number(pressure / (AIR / 2 * wind * wind)),
              Si.show(wind, Si.unit("m/s"), Si.unit("m/s"))));
      yields.from("area", "arm", "displacement", "gm", "wind", "force_share");
      yields.add(
          "heel",
          Message.of("carrying.heel"),
          Si.show(heel(pressure * heeling / righting), Si.unit("rad"), Si.DEGREE),
          Message.of("carrying.heel.how"),
          YieldList.worked(
              "k = p A h ÷ (g Δ GM) = {0} × {1} × {2} ÷ ({3} × {4} × {5})",
              Si.show(pressure, PASCAL, PASCAL),
              sails,
              units.length(arm),
              gravity,
              weighs,
              units.length(gm)),
          YieldList.worked(
              "φ = asin((√(1 + 4 × {0}²) − 1) ÷ (2 × {0}))",
              Si.number(pressure * heeling / righting)));
    }
    return yields.list();
  }

  /** Where k cos² φ = sin φ: sin φ = (√(1 + 4k²) − 1)/2k. */
  private static double heel(double k) {
    return Math.asin((Math.sqrt(1 + 4 * k * k) - 1) / (2 * k));
  }
}
