package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.wording.Message;
import java.util.List;

/** How heavy water is at a temperature, such as 999.1026 kg/m³ for fresh water at 15 °C. */
final class WaterDensity {

  /**
   * Sea water of 35.16504 g/kg at 1 to 30 °C, kg/m³. ITTC Recommended Procedure 7.5-02-01-03
   * (2011), table 3. A library at one atmosphere gives 0.044 to 0.048 kg/m³ less.
   */
  private static final double[] SEA = {
    1028.0941, 1028.0197, 1027.9327, 1027.8336, 1027.7225, 1027.6000, 1027.4662, 1027.3214,
    1027.1659, 1027.0000, 1026.8238, 1026.6376, 1026.4416, 1026.2360, 1026.0210, 1025.7967,
    1025.5633, 1025.3210, 1025.0700, 1024.8103, 1024.5421, 1024.2656, 1023.9808, 1023.6881,
    1023.3873, 1023.0788, 1022.7626, 1022.4389, 1022.1078, 1021.7694
  };

  static final List<Parameter> PARAMETERS =
      List.of(
          Parameter.word("water", "what it floats in", "fresh", "sea").or("fresh"),
          Parameter.quantity("temperature", "of the water", Si.CELSIUS).or("15 °C"),
          Parameter.quantity("density", "of the water, in place of the two above", Si.KG_M3)
              .or("that of the water at its temperature"));

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "water",
              "The density of water",
              PARAMETERS.subList(0, 2),
              inputs ->
                  new YieldList()
                      .add(
                          "density",
                          Message.of("water.density"),
                          Si.show(of(inputs), Si.KG_M3, Si.KG_M3),
                          said(inputs),
                          worked(inputs))
                      .list())
          .yielding("density", "water.density");

  private WaterDensity() {}

  /**
   * Fresh water free of air, by ρ = 999.974950 (1 − (t − 3.983035)² (t + 301.797) / (522528.9 (t +
   * 69.34881))) kg/m³. Tanaka et al., Metrologia 38 (2001) 301-309 (from memory; agrees with the
   * ITTC's table 1 to 0.0002 kg/m³ at 10 and 15 °C).
   *
   * @param temperature from 0 to 40 °C
   */
  static Quantity fresh(Quantity temperature) throws TradeException, QuantityException {
    double t = within(temperature, 0, 40);
    double drop = (t - 3.983035) * (t - 3.983035) * (t + 301.797) / (522528.9 * (t + 69.34881));
    return Si.show(999.974950 * (1 - drop), Si.KG_M3, Si.KG_M3);
  }

  /**
   * Sea water of 35.165 g/kg, straight between the table's whole degrees.
   *
   * @param temperature from 1 to 30 °C
   */
  static Quantity sea(Quantity temperature) throws TradeException, QuantityException {
    double t = within(temperature, 1, 30);
    int below = Math.min((int) t, 29);
    double share = t - below;
    return Si.show(SEA[below - 1] * (1 - share) + SEA[below] * share, Si.KG_M3, Si.KG_M3);
  }

  private static double within(Quantity temperature, int least, int most)
      throws TradeException, QuantityException {
    double t = temperature.doubleIn(Si.CELSIUS);
    if (t < least || t > most) {
      throw new TradeException(
          "temperature",
          Sentence.of("The density of water is not known here at {0}.", temperature),
          Sentence.of(
              "Give a temperature from {0} to {1} °C, or the density itself.", least, most));
    }
    return t;
  }

  /** From the inputs water, temperature and density, in kg/m³. */
  static double of(Inputs inputs) throws TradeException, QuantityException {
    if (inputs.findQuantity("density").isPresent()) {
      return Si.positive(inputs, "density", Si.KG_M3);
    }
    Quantity t = temperature(inputs);
    return (isSea(inputs) ? sea(t) : fresh(t)).doubleIn(Si.KG_M3);
  }

  static Message said(Inputs inputs) {
    if (inputs.findQuantity("density").isPresent()) {
      return Message.of("water.given");
    }
    return Message.of(isSea(inputs) ? "water.sea" : "water.fresh", temperature(inputs));
  }

  /** The formula of fresh water or the two figures of the table, the figures put in. */
  private static Message worked(Inputs inputs) throws TradeException, QuantityException {
    double t = temperature(inputs).doubleIn(Si.CELSIUS);
    if (isSea(inputs)) {
      int below = Math.min((int) t, 29);
      Quantity cold = Si.show(SEA[below - 1], Si.KG_M3, Si.KG_M3);
      Quantity warm = Si.show(SEA[below], Si.KG_M3, Si.KG_M3);
      return YieldList.worked(
          "{0} + ({1} − {2}) × ({3} − {0})", cold, Si.number(t), Si.number(below), warm);
    }
    Quantity number = Si.number(t);
    return YieldList.worked(
        "{0} × (1 − ({1} − {2})² × ({1} + {3}) ÷ ({4} × ({1} + {5})))",
        Si.show(999.974950, Si.KG_M3, Si.KG_M3),
        number,
        Si.number(3.983035),
        Si.number(301.797),
        Si.number(522528.9),
        Si.number(69.34881));
  }

  private static boolean isSea(Inputs inputs) {
    return inputs.word("water", "fresh").equals("sea");
  }

  private static Quantity temperature(Inputs inputs) {
    return inputs.findQuantity("temperature").orElse(Quantity.of(15, Si.CELSIUS));
  }
}
