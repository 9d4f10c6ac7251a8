package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.List;

/**
 * Paint, varnish or filler by its coverage: {@code coating}.
 *
 * <p>Volume = area × coats / coverage, or mass = area × coats × spread; what dries on is the share
 * of solids. Common practice, no source.
 */
final class Coating {

  private static final Unit COVERAGE = Si.unit("m²/L");

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "coating",
              "Paint and filler by coverage",
              List.of(
                  Parameter.quantity("area", "to be coated", Si.M2),
                  Parameter.quantity("coats", "how many", Unit.ONE).or("1"),
                  Parameter.quantity("coverage", "area that a volume covers once", COVERAGE)
                      .or("by its spread"),
                  Parameter.quantity("spread", "wet mass on an area", Si.KG_M2)
                      .or("by its coverage"),
                  Parameter.quantity("density", "of the coating, wet", Si.KG_M3)
                      .or("needed to turn volume into mass"),
                  Parameter.quantity("solids", "share of the wet mass that stays", Unit.ONE)
                      .or("100 %")
                      .recalling(),
                  Parameter.quantity("waste", "share of the coating that is lost", Unit.ONE)
                      .or("0 %")),
              Coating::of)
          .yielding(
              "volume", "coating.amount",
              "wet_mass", "coating.mass",
              "mass", "coating.dry");

  private Coating() {}

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    double covered = Si.positive(inputs, "area", Si.M2) * Si.positive(inputs, "coats", Unit.ONE, 1);
    double kept = 1 - Si.share(inputs, "waste", 0);
    boolean byCoverage = inputs.findQuantity("coverage").isPresent();
    if (byCoverage == inputs.findQuantity("spread").isPresent()) {
      throw new TradeException(
          byCoverage ? "spread" : "coverage",
          byCoverage ? "Coverage and spread are both given." : "It is not said how far it goes.",
          "Give either coverage, such as 10 m²/L, or spread, such as 80 g/m².");
    }
    boolean dense = inputs.findQuantity("density").isPresent();
    double density = dense ? Si.positive(inputs, "density", Si.KG_M3) : Double.NaN;
    YieldList yields = new YieldList();
    double wet =
        byCoverage
            ? covered / Si.positive(inputs, "coverage", Si.unit("m²/m³")) * density
            : covered * Si.positive(inputs, "spread", Si.KG_M2);
    double volume =
        byCoverage ? covered / Si.positive(inputs, "coverage", Si.unit("m²/m³")) : wet / density;
    if (byCoverage || dense) {
      yields.from("area", "coats", "coverage", "spread", "density", "waste");
      yields.add(
          "volume",
          Message.of("coating.amount"),
          Si.show(volume / kept, Si.M3, Si.unit("mL")),
          Message.of("coating.amount.how"),
          byCoverage
              ? new Terms()
                  .add(spreadOver(inputs))
                  .end(
                      " ÷ ",
                      inputs.quantity("coverage").withoutTolerance(),
                      " ÷ ",
                      Si.percent(kept))
              : YieldList.worked(
                  "{0} ÷ {1}", Si.show(volume, Si.M3, Si.unit("mL")), Si.percent(kept)));
    }
    if (!byCoverage || dense) {
      masses(yields, inputs, wet, kept);
    }
    return yields.list();
  }

  /** The area times the coats. */
  private static Object[] spreadOver(Inputs inputs) throws TradeException, QuantityException {
    return new Object[] {
      inputs.quantity("area").withoutTolerance(),
      " × ",
      Si.number(Si.positive(inputs, "coats", Unit.ONE, 1))
    };
  }

  private static void masses(YieldList yields, Inputs inputs, double wet, double kept)
      throws TradeException, QuantityException {
    yields.from("area", "coats", "coverage", "spread", "density", "waste");
    Quantity given = inputs.findQuantity("solids").orElse(Quantity.of(1, Unit.ONE));
    double solids = given.doubleIn(Unit.ONE);
    if (solids <= 0 || solids > 1) {
      throw new TradeException(
          "solids",
          Sentence.of("The share of solids is {0}.", given),
          "Give more than 0 and at most 100 %.");
    }
    yields.add(
        "wet_mass",
        Message.of("coating.mass"),
        Laminate.grams(wet / kept),
        Message.of("coating.mass.how"),
        inputs.findQuantity("spread").isPresent()
            ? new Terms()
                .add(spreadOver(inputs))
                .end(" × ", inputs.quantity("spread").withoutTolerance(), " ÷ ", Si.percent(kept))
            : YieldList.worked("{0} ÷ {1}", Laminate.grams(wet), Si.percent(kept)));
    yields.from("area", "coats", "coverage", "spread", "density", "solids");
    yields.add(
        "mass",
        Message.of("coating.dry"),
        Laminate.grams(wet * solids),
        Message.of("coating.dry.how"),
        YieldList.worked("{0} × {1}", Laminate.grams(wet), Si.percent(solids)));
  }
}
