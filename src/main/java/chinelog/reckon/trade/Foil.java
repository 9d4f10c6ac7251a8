package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.List;

/**
 * A fin, skeg or rudder as a solid of a published symmetric section: {@code foil}.
 *
 * <p>The chord runs straight from root to tip, the thickness is the same share of it throughout; V
 * = k τ s (a² + ab + b²)/3 with k = 0.6851 of {@link FoilSection}, a and b the chords at root and
 * tip and s the span. The centre follows from the same integral, which Simpson's rule does exactly.
 */
final class Foil {

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "foil",
              "A fin, skeg or rudder of a symmetric section",
              List.of(
                  Parameter.quantity("root", "chord at the hull", Unit.METRE),
                  Parameter.quantity("tip", "chord at the lower end", Unit.METRE)
                      .or("that of the root"),
                  Parameter.quantity("span", "from root to tip, downward", Unit.METRE),
                  Parameter.quantity("thickness", "share of the chord", Unit.ONE),
                  Parameter.quantity("x", "of the nose at the root, from the aft end", Unit.METRE)
                      .or("0"),
                  Parameter.quantity("rake", "how far the tip's nose lies further aft", Unit.METRE)
                      .or("0"),
                  Parameter.quantity("z", "of the root above the base line", Unit.METRE).or("0"),
                  Parameter.quantity("density", "of what it is made of", Si.KG_M3).or(""),
                  Parameter.quantity("water_density", "of the water", Si.KG_M3)
                      .or("999.1 kg/m³, fresh water at 15 °C")),
              Foil::of)
          .yielding(
              "area", "foil.area",
              "volume", "foil.volume",
              "displacement", "foil.displacement",
              "x", "foil.x",
              "z", "foil.z",
              "skin", "foil.skin",
              "mass", "foil.mass",
              "net", "foil.net")
          .drawing(Foil::draw);

  private Foil() {}

  private static List<Part> draw(Inputs inputs) throws TradeException, QuantityException {
    double root = Si.positive(inputs, "root", Unit.METRE);
    return FoilPattern.fin(
        root,
        Si.positive(inputs, "tip", Unit.METRE, root),
        Si.positive(inputs, "span", Unit.METRE),
        Si.value(inputs, "rake", Unit.METRE, 0),
        thickness(inputs, "thickness"));
  }

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    double root = Si.positive(inputs, "root", Unit.METRE);
    double tip = Si.positive(inputs, "tip", Unit.METRE, root);
    double span = Si.positive(inputs, "span", Unit.METRE);
    double thick = thickness(inputs, "thickness");
    ShopUnits units = ShopUnits.of(inputs.quantity("root").unit());
    double square = (root * root + root * tip + tip * tip) / 3;
    double volume = FoilSection.area() * thick * span * square;
    YieldList yields = new YieldList().from("root", "tip", "span");
    Quantity a = units.length(root);
    Quantity b = units.length(tip);
    Quantity s = units.length(span);
    yields.add(
        "area",
        Message.of("foil.area"),
        units.area(span * (root + tip) / 2),
        YieldList.worked("s (a + b) ÷ 2 = {0} × ({1} + {2}) ÷ 2", s, a, b));
    yields.from("root", "tip", "span", "thickness");
    yields.add(
        "volume",
        Message.of("foil.volume"),
        units.volume(volume),
        YieldList.worked(
            "k τ s (a² + ab + b²) ÷ 3 = {0} × {1} × {2} × {3}",
            Si.number(FoilSection.area()), Si.percent(thick), s, units.area(square)),
        FoilSection.SOURCE);
    centre(yields, inputs, units, root, tip, span);
    yields.from("root", "tip", "span", "thickness");
    yields.add(
        "skin",
        Message.of("foil.skin"),
        units.area(span * (root + tip) / 2 * FoilSection.round(thick)),
        Message.of("foil.skin.how"),
        YieldList.worked(
            "{0} × {1}", units.area(span * (root + tip) / 2), Si.number(FoilSection.round(thick))));
    masses(yields, inputs, units, volume, "root", "tip", "span", "thickness");
    return yields.list();
  }

  static double thickness(Inputs inputs, String name) throws TradeException, QuantityException {
    double thick = Si.positive(inputs, name, Unit.ONE);
    if (thick > 0.5) {
      throw new TradeException(
          name,
          Sentence.of(
              "A section as thick as {0} of its length is not in the family.",
              inputs.quantity(name)),
          "Give a share up to 50 %, such as 10 %.");
    }
    return thick;
  }

  /** What it displaces, weighs, and weighs in water. */
  static void masses(
      YieldList yields, Inputs inputs, ShopUnits units, double volume, String... form)
      throws TradeException, QuantityException {
    double water = Si.positive(inputs, "water_density", Si.KG_M3, 999.1);
    List<String> wet = new ArrayList<>(List.of(form));
    wet.add("water_density");
    yields.from(wet.toArray(String[]::new));
    yields.add(
        "displacement",
        Message.of("foil.displacement"),
        units.mass(volume * water),
        YieldList.worked("{0} × {1}", units.volume(volume), units.density(water)));
    if (inputs.findQuantity("density").isEmpty()) {
      return;
    }
    double density = Si.positive(inputs, "density", Si.KG_M3);
    wet.add("density");
    yields.from(wet.toArray(String[]::new));
    yields.add(
        "mass",
        Message.of("foil.mass"),
        units.mass(volume * density),
        YieldList.worked("{0} × {1}", units.volume(volume), units.density(density)));
    yields.add(
        "net",
        Message.of("foil.net"),
        units.mass(volume * (density - water)),
        Message.of("foil.net.how"),
        YieldList.worked("{0} − {1}", units.mass(volume * density), units.mass(volume * water)));
  }

  private static void centre(
      YieldList yields, Inputs inputs, ShopUnits units, double root, double tip, double span)
      throws TradeException, QuantityException {
    double nose = Si.value(inputs, "x", Unit.METRE, 0);
    double rake = Si.value(inputs, "rake", Unit.METRE, 0);
    double top = Si.value(inputs, "z", Unit.METRE, 0);
    double[] sums = new double[3];
    Terms along = new Terms("(");
    Terms up = new Terms("(");
    for (int i = 0; i <= 2; i++) {
      double u = i / 2.0;
      double chord = root + (tip - root) * u;
      double weight = (i == 1 ? 4 : 1) * chord * chord / 6;
      double at = nose - rake * u - FoilSection.centre() * chord;
      sums[0] += weight;
      sums[1] += weight * at;
      sums[2] += weight * (top - span * u);
      Quantity square = units.power(6 * weight, 2);
      along.add(square, " × (", units.side(at), ")");
      up.add(square, " × (", units.side(top - span * u), ")");
    }
    Message thirds = Message.of("foil.thirds");
    yields.from("root", "tip", "span", "x", "rake");
    yields.add(
        "x",
        Message.of("foil.x"),
        units.length(sums[1] / sums[0]),
        Message.of("foil.centre.how", Si.number(FoilSection.centre())),
        thirds,
        along.end(") ÷ ", units.power(6 * sums[0], 2)));
    yields.from("root", "tip", "span", "z");
    yields.add(
        "z",
        Message.of("foil.z"),
        units.length(sums[2] / sums[0]),
        Message.of("foil.centre.how", Si.number(FoilSection.centre())),
        thirds,
        up.end(") ÷ ", units.power(6 * sums[0], 2)));
  }
}
