package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.List;

/**
 * Cells, motor and propeller of a working model: {@code motor}.
 *
 * <p>Energy = voltage × capacity; power = voltage × current; time = usable charge ÷ current. A
 * propeller's pitch speed = turns × pitch, its slip 1 − speed/(turns × pitch). By Froude's law
 * speed goes with √λ and power with λ^3.5 and the density of the water (ITTC; friction is not
 * corrected for, so that a model needs more). Power from a measured pull = pull × speed ÷
 * efficiency.
 */
final class Motor {

  private static final Unit VOLT = Si.unit("V");
  private static final Unit AMPERE = Si.unit("A");
  private static final Unit CHARGE = Si.unit("Ah");
  private static final Unit WATT = Si.unit("W");
  private static final Unit TURNS = Si.unit("rpm");
  private static final Unit SPEED = Si.unit("m/s");
  private static final Unit NEWTON = Si.unit("N");

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "motor",
              "Cells, motor and propeller",
              List.of(
                  Parameter.quantity("voltage", "of the cells under load", VOLT).or(""),
                  Parameter.quantity("capacity", "of the cells", CHARGE).or(""),
                  Parameter.quantity("current", "drawn at the speed wanted", AMPERE).or(""),
                  Parameter.quantity("usable", "share of the capacity that is used", Unit.ONE)
                      .or("80 %")
                      .recalling(),
                  Parameter.quantity("turns", "of the propeller", TURNS).or(""),
                  Parameter.quantity("pitch", "of the propeller", Unit.METRE).or(""),
                  Parameter.quantity("speed", "through the water", SPEED).or(""),
                  Parameter.quantity("slip", "of the propeller, to find its pitch", Unit.ONE)
                      .or(""),
                  Parameter.quantity("pull", "that tows her at this speed", NEWTON).or(""),
                  Parameter.quantity("efficiency", "of propeller, shaft and motor", Unit.ONE)
                      .or("40 %")
                      .recalling(),
                  Parameter.quantity("full_power", "of the vessel's engines", WATT).or(""),
                  Parameter.quantity("full_speed", "of the vessel", SPEED).or(""),
                  Parameter.quantity("scale", "how many times smaller the model is", Unit.ONE)
                      .or("")),
              Motor::of)
          .yielding(
              "energy", "motor.energy",
              "power", "motor.power",
              "run_time", "motor.time",
              "pitch_speed", "motor.pitch.speed",
              "slip", "motor.slip",
              "pitch_wanted", "motor.pitch",
              "power_to_tow", "motor.tow",
              "power_wanted", "motor.wanted",
              "scale_speed", "motor.scale.speed",
              "scale_power", "motor.scale.power");

  private final Inputs inputs;
  private final YieldList yields = new YieldList();

  private Motor(Inputs inputs) {
    this.inputs = inputs;
  }

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    Motor motor = new Motor(inputs);
    motor.cells();
    motor.propeller();
    motor.towed();
    motor.scaled();
    if (motor.yields.list().isEmpty()) {
      throw new TradeException(
          "voltage",
          "There is nothing to reckon about this motor.",
          "Give voltage, capacity and current; or turns, pitch and speed; or pull and speed.");
    }
    return motor.yields.list();
  }

  private double given(String name, Unit unit) throws TradeException, QuantityException {
    return Si.positive(inputs, name, unit);
  }

  private Quantity as(String name, Unit unit) throws TradeException, QuantityException {
    return Si.show(given(name, unit), unit, unit);
  }

  private void cells() throws TradeException, QuantityException {
    if (inputs.hasAll("voltage", "capacity")) {
      yields.from("voltage", "capacity");
      yields.add(
          "energy",
          Message.of("motor.energy"),
          Si.show(given("voltage", VOLT) * given("capacity", CHARGE), Si.unit("Wh"), Si.unit("Wh")),
          YieldList.worked("U × Q = {0} × {1}", as("voltage", VOLT), as("capacity", CHARGE)));
    }
    if (inputs.hasAll("voltage", "current")) {
      yields.from("voltage", "current");
      yields.add(
          "power",
          Message.of("motor.power"),
          Si.show(given("voltage", VOLT) * given("current", AMPERE), WATT, WATT),
          YieldList.worked("U × I = {0} × {1}", as("voltage", VOLT), as("current", AMPERE)));
    }
    if (inputs.hasAll("capacity", "current")) {
      double usable = share("usable", 0.8);
      yields.from("capacity", "current", "usable");
      yields.add(
          "run_time",
          Message.of("motor.time"),
          Si.show(
              given("capacity", CHARGE) * usable / given("current", AMPERE),
              Unit.HOUR,
              Unit.MINUTE),
          YieldList.worked(
              "Q × u ÷ I = {0} × {1} ÷ {2}",
              as("capacity", CHARGE), Si.percent(usable), as("current", AMPERE)),
          Message.of("motor.caution"));
    }
  }

  private double share(String name, double fallback) throws TradeException, QuantityException {
    double share = Si.positive(inputs, name, Unit.ONE, fallback);
    if (share > 1) {
      throw new TradeException(
          name, Sentence.of("\"{0}\" is more than the whole.", name), "Give at most 100 %.");
    }
    return share;
  }

  private void propeller() throws TradeException, QuantityException {
    Unit mm = Unit.MILLIMETRE;
    if (inputs.hasAll("turns", "pitch")) {
      double advance = given("turns", Si.unit("Hz")) * given("pitch", Unit.METRE);
      yields.from("turns", "pitch");
      yields.add(
          "pitch_speed",
          Message.of("motor.pitch.speed"),
          Si.show(advance, SPEED, SPEED),
          YieldList.worked("n × p = {0} × {1}", as("turns", TURNS), as("pitch", mm)));
      if (inputs.hasAll("speed")) {
        yields.from("turns", "pitch", "speed");
        yields.add(
            "slip",
            Message.of("motor.slip"),
            Si.percent(1 - given("speed", SPEED) / advance),
            YieldList.worked(
                "1 − v ÷ (n × p) = 1 − {0} ÷ {1}",
                as("speed", SPEED), Si.show(advance, SPEED, SPEED)));
      }
    }
    if (inputs.hasAll("turns", "speed", "slip")) {
      double slip = Si.share(inputs, "slip", 0);
      yields.from("turns", "speed", "slip");
      yields.add(
          "pitch_wanted",
          Message.of("motor.pitch"),
          Si.show(
              given("speed", SPEED) / given("turns", Si.unit("Hz")) / (1 - slip), Unit.METRE, mm),
          YieldList.worked(
              "v ÷ n ÷ (1 − s) = {0} ÷ {1} ÷ (1 − {2})",
              as("speed", SPEED), as("turns", TURNS), Si.percent(slip)));
    }
  }

  private void towed() throws TradeException, QuantityException {
    if (!inputs.hasAll("pull", "speed")) {
      return;
    }
    double tow = given("pull", NEWTON) * given("speed", SPEED);
    double efficiency = share("efficiency", 0.4);
    yields.from("pull", "speed");
    yields.add(
        "power_to_tow",
        Message.of("motor.tow"),
        Si.show(tow, WATT, WATT),
        YieldList.worked("R × v = {0} × {1}", as("pull", NEWTON), as("speed", SPEED)));
    yields.from("pull", "speed", "efficiency");
    yields.add(
        "power_wanted",
        Message.of("motor.wanted"),
        Si.show(tow / efficiency, WATT, WATT),
        YieldList.worked(
            "R × v ÷ η = {0} ÷ {1}", Si.show(tow, WATT, WATT), Si.percent(efficiency)));
  }

  private void scaled() throws TradeException, QuantityException {
    if (!inputs.hasAll("scale")) {
      return;
    }
    double scale = given("scale", Unit.ONE);
    Message law = Message.of("motor.froude");
    if (inputs.hasAll("full_speed")) {
      yields.from("full_speed", "scale");
      yields.add(
          "scale_speed",
          Message.of("motor.scale.speed"),
          Si.show(given("full_speed", SPEED) / Math.sqrt(scale), SPEED, SPEED),
          YieldList.worked("V ÷ √λ = {0} ÷ √{1}", as("full_speed", SPEED), Si.number(scale)),
          law);
    }
    if (inputs.hasAll("full_power")) {
      yields.from("full_power", "scale");
      yields.add(
          "scale_power",
          Message.of("motor.scale.power"),
          Si.show(given("full_power", WATT) / Math.pow(scale, 3.5), WATT, WATT),
          YieldList.worked("P ÷ λ^3.5 = {0} ÷ {1}^3.5", as("full_power", WATT), Si.number(scale)),
          law);
    }
  }
}
