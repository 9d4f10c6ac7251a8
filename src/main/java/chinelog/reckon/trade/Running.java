package chinelog.reckon.trade;

import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.List;

/**
 * How a hull runs: its Froude and Reynolds numbers, and the friction line: {@code running}.
 *
 * <p>Fn = v/√(gL); Re = vL/ν; CF = 0.075/(log10 Re − 2)² (ITTC-1957, Recommended Procedure
 * 7.5-02-02-01). A model at the Froude number of the full size makes its waves to scale, but rubs
 * harder: its resistance, times the cube of the scale, is no forecast.
 */
final class Running {

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "running",
              "How a hull runs: Froude and Reynolds numbers and friction",
              List.of(
                  Parameter.quantity("speed", "through the water", Si.unit("m/s")),
                  Parameter.quantity("length", "of the waterline", Unit.METRE),
                  Parameter.quantity("viscosity", "of the water, kinematic", Si.unit("m²/s"))
                      .or("1.1386 mm²/s, fresh water at 15 °C")
                      .recalling()),
              Running::of)
          .yielding(
              "froude", "running.froude",
              "reynolds", "running.reynolds",
              "friction", "running.friction");

  private static final Unit MS = Si.unit("m/s");

  /** m/s², by convention. */
  private static final double GRAVITY = 9.80665;

  private Running() {}

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    double speed = Si.positive(inputs, "speed", Si.unit("m/s"));
    double length = Si.positive(inputs, "length", Unit.METRE);
    double reynolds = speed * length / Si.positive(inputs, "viscosity", Si.unit("m²/s"), 1.1386e-6);
    YieldList yields = new YieldList();
    yields.from("speed", "length");
    yields.add(
        "froude",
        Message.of("running.froude"),
        Si.number(speed / Math.sqrt(GRAVITY * length)),
        Message.of("running.froude.how"),
        YieldList.worked(
            "{0} ÷ √(9.80665 m/s² × {1})",
            Si.show(speed, MS, MS), Si.show(length, Unit.METRE, Unit.METRE)));
    yields.from("speed", "length", "viscosity");
    yields.add(
        "reynolds",
        Message.of("running.reynolds"),
        Si.number(reynolds),
        Message.of("running.reynolds.how"),
        YieldList.worked(
            "{0} × {1} ÷ {2}",
            Si.show(speed, MS, MS),
            Si.show(length, Unit.METRE, Unit.METRE),
            Si.show(speed * length / reynolds, Si.unit("m²/s"), Si.unit("mm²/s"))));
    if (reynolds < 1e5) {
      throw new TradeException(
          "speed",
          "At a Reynolds number below 100,000 the friction line says nothing.",
          "Give a higher speed or a greater length.");
    }
    double line = Math.log10(reynolds) - 2;
    yields.add(
        "friction",
        Message.of("running.friction"),
        Si.number(0.075 / (line * line)),
        Message.of("running.friction.how"),
        YieldList.worked("0.075 ÷ ({0} − 2)²", Si.number(line + 2)));
    return yields.list();
  }
}
