package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Masses and their centres against what the hull displaces: {@code balance}.
 *
 * <p>Centre = Σmx/Σm on each axis; ballast = displacement − Σm at (Δ LCB − Σmx)/ballast; GM = KB +
 * BM − KG; GZ = (GM + ½ BM tan²φ) sin φ for upright sides; sinkage = mass over ρA; trim = moment /
 * (W GML / L). Derrett and Barrass, Ship Stability for Masters and Mates, 5th edition (1999).
 */
final class Balance {

  private static final Message DERRETT = Message.of("source.derrett");
  private static final Unit PER_METRE = Si.KG_M;

  /** No hull is longer than this many times its waterline. */
  private static final double OVERHANG = 1.5;

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "balance",
              "Masses and their centres against the displacement",
              List.of(
                  Parameter.table("masses", "what is aboard", "item?", "mass", "x", "y?", "z?"),
                  Parameter.quantity("displacement", "at the design waterline", Unit.KILOGRAM)
                      .or(""),
                  Parameter.quantity("lcb", "centre of buoyancy from the aft end", Unit.METRE)
                      .or(""),
                  Parameter.quantity("vcb", "centre of buoyancy above the base line", Unit.METRE)
                      .or(""),
                  Parameter.quantity("bm", "metacentre above the centre of buoyancy", Unit.METRE)
                      .or(""),
                  Parameter.quantity("bml", "the same along the hull", Unit.METRE).or(""),
                  Parameter.quantity("lwl", "length of the waterline", Unit.METRE).or(""),
                  Parameter.quantity(
                          "loa", "length of the hull, within which ballast lies", Unit.METRE)
                      .or("seen from the others"),
                  Parameter.quantity("lcf", "centre of the waterplane from the aft end", Unit.METRE)
                      .or(""),
                  Parameter.quantity("immersion", "mass that sinks it evenly", PER_METRE).or(""),
                  Parameter.quantity(
                          "ballast_z", "height of the ballast above the base line", Unit.METRE)
                      .or("0"),
                  Parameter.quantity("ballast_density", "of the ballast", Si.KG_M3).or(""),
                  Parameter.word(
                          "ballast_lies",
                          "in the hull, or below it in the water, where it bears itself in part",
                          "inside",
                          "outside")
                      .or("inside"),
                  Parameter.quantity("water_density", "of the water", Si.KG_M3)
                      .or("999.1 kg/m³, fresh water at 15 °C"),
                  Parameter.quantity(
                          "target", "where the centre shall lie along the hull", Unit.METRE)
                      .or(""),
                  Parameter.quantity("ballast_x", "where ballast for it can go", Unit.METRE).or(""),
                  Parameter.quantity("heel", "an angle to tell the righting arm at", Si.DEGREE)
                      .or("")),
              Balance::of)
          .yielding(
              "mass", "balance.mass",
              "lcg", "balance.lcg",
              "tcg", "balance.tcg",
              "vcg", "balance.vcg",
              "ballast", "balance.ballast",
              "ballast_net", "balance.net",
              "ballast_at", "balance.place",
              "ballast_volume", "balance.volume",
              "sinkage", "balance.sinkage",
              "ballast_to_target", "balance.target",
              "gm", "balance.gm",
              "gz", "balance.arm",
              "righting", "balance.moment",
              "righting_by_arm", "balance.moment.arm",
              "mct", "balance.mct",
              "trim", "balance.trim",
              "trim_aft", "balance.trim.aft",
              "trim_fore", "balance.trim.fore");

  private final Inputs inputs;
  private final YieldList yields = new YieldList();
  private final ShopUnits units;
  private final double mass;
  private final double xMoment;
  private final double yMoment;
  private final double zMoment;
  private final boolean heights;
  private final boolean sides;

  private Balance(Inputs inputs) throws TradeException, QuantityException {
    this.inputs = inputs;
    Columns columns = new Columns("masses", inputs.table("masses"));
    units = ShopUnits.of(columns.unit("x"));
    double[] m = columns.numbers("mass", Unit.KILOGRAM);
    for (int i = 0; i < m.length; i++) {
      if (m[i] < 0) {
        throw columns.at(i, "A mass is negative.", "Take out what is not aboard.");
      }
    }
    heights = columns.find("z").isPresent();
    sides = columns.find("y").isPresent();
    mass = Arrays.stream(m).sum();
    xMoment = moment(m, columns.numbers("x", Unit.METRE));
    yMoment = moment(m, columns.numbers("y", Unit.METRE, 0));
    zMoment = moment(m, columns.numbers("z", Unit.METRE, 0));
    if (mass <= 0) {
      throw new TradeException(
          "masses", "All masses together are zero.", "Give the mass of one item at least.");
    }
  }

  private static double moment(double[] m, double[] lever) {
    double sum = 0;
    for (int i = 0; i < m.length; i++) {
      sum += m[i] * lever[i];
    }
    return sum;
  }

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    Balance balance = new Balance(inputs);
    balance.centre();
    double net = balance.inputs.hasAll("displacement") ? Math.max(0, balance.ballast()) : 0;
    balance.target();
    balance.upright(net / balance.share(), net / balance.share() - net);
    balance.trim(balance.xMoment / balance.mass);
    return balance.yields.list();
  }

  private void length(String name, String title, double value, Message... method)
      throws TradeException {
    yields.add(name, Message.of(title), units.length(value), method);
  }

  private Quantity moment(double kgM) throws TradeException {
    return Si.show(kgM, Si.unit("kg·m"), moments());
  }

  private Message over(String lever) throws TradeException, QuantityException {
    return added(lever, "(", ") ÷ ", massOf(mass));
  }

  private Quantity massOf(double kg) throws TradeException {
    return Si.show(kg, Unit.KILOGRAM, new Columns("masses", inputs.table("masses")).unit("mass"));
  }

  private void centre() throws TradeException, QuantityException {
    Message moments = Message.of("balance.centre.how");
    yields.from("masses");
    yields.add("mass", "balance.mass", massOf(mass), added(null, ""));
    length("lcg", "balance.lcg", xMoment / mass, moments, over("x"));
    if (sides) {
      length("tcg", "balance.tcg", yMoment / mass, moments, over("y"));
    }
    if (heights) {
      length("vcg", "balance.vcg", zMoment / mass, moments, over("z"));
    }
  }

  /** The masses added up, each times its lever where one is named. */
  private Message added(@Nullable String lever, String sum, Object... after)
      throws TradeException, QuantityException {
    Columns columns = new Columns("masses", inputs.table("masses"));
    double[] m = columns.numbers("mass", Unit.KILOGRAM);
    double[] at = lever == null ? m : columns.numbers(lever, Unit.METRE, 0);
    Terms terms = new Terms(sum);
    for (int i = 0; i < m.length; i++) {
      if (lever == null) {
        terms.add(massOf(m[i]));
      } else if (m[i] != 0 && at[i] != 0) {
        terms.add(massOf(m[i]), " × ", units.length(at[i]));
      }
    }
    return (terms.isEmpty() ? terms.add("0") : terms).end(after);
  }

  /** What ballast weighs where it lies, as a part of its mass: less in the water. */
  private double share() throws TradeException, QuantityException {
    if (!inputs.word("ballast_lies", "inside").equals("outside")) {
      return 1;
    }
    double density = Si.positive(inputs, "ballast_density", Si.KG_M3);
    double water = Si.positive(inputs, "water_density", Si.KG_M3, 999.1);
    if (density <= water) {
      throw new TradeException(
          "ballast_density", "Such ballast floats.", "Give a density above the water's.");
    }
    return 1 - water / density;
  }

  private void outside(double ballast) throws TradeException, QuantityException {
    Quantity density = inputs.quantity("ballast_density").withoutTolerance();
    double water = Si.positive(inputs, "water_density", Si.KG_M3, 999.1);
    yields.from("masses", "displacement", "ballast_density", "ballast_lies", "water_density");
    yields.add(
        "ballast",
        Message.of("balance.ballast"),
        massOf(ballast / share()),
        Message.of("balance.outside.how"),
        YieldList.worked("{0} ÷ (1 − {1} ÷ {2})", massOf(ballast), units.density(water), density));
    yields.from("masses", "displacement");
    yields.add(
        "ballast_net",
        Message.of("balance.net"),
        massOf(ballast),
        Message.of("balance.ballast.how"),
        YieldList.worked(
            "{0} − {1}", massOf(Si.positive(inputs, "displacement", Unit.KILOGRAM)), massOf(mass)));
  }

  /** What ballast has to weigh where it lies, in kg; below zero if all is too heavy already. */
  private double ballast() throws TradeException, QuantityException {
    double displacement = Si.positive(inputs, "displacement", Unit.KILOGRAM);
    double ballast = displacement - mass;
    yields.from("masses", "displacement");
    if (ballast > 0 && share() < 1) {
      outside(ballast);
    } else {
      yields.add(
          "ballast",
          "balance.ballast",
          massOf(ballast),
          YieldList.worked("{0} − {1}", massOf(displacement), massOf(mass)));
    }
    if (ballast > 0 && inputs.hasAll("lcb")) {
      double lcb = Si.value(inputs, "lcb", Unit.METRE);
      yields.from("masses", "displacement", "lcb");
      length(
          "ballast_at",
          "balance.place",
          (displacement * lcb - xMoment) / ballast,
          Message.of("balance.place.how"),
          YieldList.worked(
              "({0} × {1} − {2}) ÷ {3}",
              massOf(displacement), units.length(lcb), moment(xMoment), massOf(ballast)));
      cautionOutside((displacement * lcb - xMoment) / ballast);
    }
    if (ballast > 0 && inputs.hasAll("ballast_density")) {
      double density = Si.positive(inputs, "ballast_density", Si.KG_M3);
      yields.from("masses", "displacement", "ballast_density", "ballast_lies", "water_density");
      yields.add(
          "ballast_volume",
          Message.of("balance.volume"),
          units.volume(ballast / share() / density),
          Message.of("mass.over.density"),
          YieldList.worked("{0} ÷ {1}", units.mass(ballast / share()), units.density(density)));
    }
    if (inputs.hasAll("immersion")) {
      double immersion = Si.positive(inputs, "immersion", PER_METRE);
      yields.from("masses", "displacement", "immersion");
      length(
          "sinkage",
          "balance.sinkage",
          -ballast / immersion,
          Message.of("balance.sinkage.how"),
          YieldList.worked("{0} ÷ {1}", units.mass(-ballast), units.immersion(immersion)));
    }
    return ballast;
  }

  /** Ballast cannot lie where there is no hull; how far she reaches is seen from what is known. */
  private void cautionOutside(double at) throws TradeException, QuantityException {
    double fore =
        inputs.findQuantity("loa").isPresent() ? Si.positive(inputs, "loa", Unit.METRE) : 0;
    if (fore == 0) {
      double[] x = new Columns("masses", inputs.table("masses")).numbers("x", Unit.METRE);
      fore = 2 * Si.value(inputs, "lcb", Unit.METRE);
      fore = Math.max(fore, Arrays.stream(x).max().orElse(0));
      fore = Math.max(fore, OVERHANG * Si.value(inputs, "lwl", Unit.METRE, 0));
    }
    if (at < 0 || at > fore) {
      yields.caution(
          Sentence.of(
              at < 0
                  ? "ballast would have to lie outside the hull, {0} aft of its aft end."
                  : "ballast would have to lie outside the hull, {0} forward of its aft end.",
              units.about(Math.abs(at))),
          "No ballast trims her so; shift what is aboard, or look at lcb, the masses and their x,"
              + " and whether all are measured from the same end.");
    }
  }

  private void target() throws TradeException, QuantityException {
    if (!inputs.hasAll("target")) {
      return;
    }
    double target = Si.value(inputs, "target", Unit.METRE);
    double at = Si.value(inputs, "ballast_x", Unit.METRE);
    double shift = mass * (target - xMoment / mass);
    if (at == target || shift / (at - target) < 0) {
      throw new TradeException(
          "ballast_x",
          "Ballast there does not bring the centre to where it shall lie.",
          "Give a place beyond the target, seen from where the centre lies now.");
    }
    yields.from("masses", "target", "ballast_x");
    yields.add(
        "ballast_to_target",
        "balance.target",
        massOf(shift / (at - target)),
        YieldList.worked(
            "{0} × ({1} − {2}) ÷ ({3} − {1})",
            massOf(mass), units.length(target), units.length(xMoment / mass), units.length(at)));
  }

  /**
   * How she stands up.
   *
   * @param ballast its whole mass
   * @param bearing the mass of the water that ballast outside the hull displaces
   */
  private void upright(double ballast, double bearing) throws TradeException, QuantityException {
    if (!heights || !inputs.hasAll("vcb", "bm")) {
      return;
    }
    double afloat = mass + ballast;
    double low = Si.value(inputs, "ballast_z", Unit.METRE, 0);
    double kg = (zMoment + ballast * low) / afloat;
    double hull = afloat - bearing;
    double bm = Si.positive(inputs, "bm", Unit.METRE) * hull / afloat;
    double kb = (Si.value(inputs, "vcb", Unit.METRE) * hull + low * bearing) / afloat;
    double gm = kb + bm - kg;
    yields.from(
        "masses",
        "displacement",
        "vcb",
        "bm",
        "ballast_z",
        "ballast_density",
        "ballast_lies",
        "water_density");
    length(
        "gm",
        "balance.gm",
        gm,
        Message.of("balance.gm.how", DERRETT),
        bearing > 0
            ? Message.of("balance.outside.gm", massOf(bearing), units.length(kb), units.length(bm))
            : Message.of("balance.inside.gm", units.length(kb), units.length(bm)),
        YieldList.worked("{0} + {1} − {2}", units.length(kb), units.length(bm), units.length(kg)),
        Message.of(
            "balance.kg.how",
            units.length(zMoment / mass),
            massOf(afloat - mass),
            Si.show(Si.value(inputs, "ballast_z", Unit.METRE, 0), Unit.METRE, units.lengthUnit()),
            units.length(kg)));
    if (inputs.hasAll("heel")) {
      double heel = Math.toRadians(Si.value(inputs, "heel", Si.DEGREE));
      if (Math.abs(heel) >= Math.PI / 2) {
        throw new TradeException("heel", "It would lie on its side.", "Give less than 90 deg.");
      }
      double tan = Math.tan(heel);
      Quantity angle = Si.show(Math.toDegrees(heel), Si.DEGREE, Si.DEGREE);
      double gz = (gm + bm * tan * tan / 2) * Math.sin(heel);
      yields.from("masses", "displacement", "vcb", "bm", "ballast_z", "heel");
      length(
          "gz",
          "balance.arm",
          gz,
          Message.of("balance.arm.how", DERRETT),
          YieldList.worked(
              "({0} + ½ × {1} × tan² {2}) × sin {2}", units.length(gm), units.length(bm), angle));
      yields.add(
          "righting",
          Message.of("balance.moment"),
          moment(afloat * gm * Math.sin(heel)),
          Message.of("balance.moment.how", DERRETT),
          YieldList.worked("{0} × {1} × sin {2}", massOf(afloat), units.length(gm), angle));
      yields.add(
          "righting_by_arm",
          "balance.moment.arm",
          moment(afloat * gz),
          YieldList.worked("{0} × {1}", massOf(afloat), units.length(gz)));
    }
  }

  private Unit moments() throws TradeException {
    return new Columns("masses", inputs.table("masses")).unit("mass").times(units.lengthUnit());
  }

  private void trim(double lcg) throws TradeException, QuantityException {
    if (!inputs.hasAll("displacement", "bml", "lwl") || !heights || !inputs.hasAll("vcb")) {
      return;
    }
    double displacement = Si.positive(inputs, "displacement", Unit.KILOGRAM);
    double length = Si.positive(inputs, "lwl", Unit.METRE);
    double gml =
        Si.value(inputs, "vcb", Unit.METRE)
            + Si.positive(inputs, "bml", Unit.METRE)
            - zMoment / mass;
    double change = displacement * gml / length;
    yields.from("masses", "displacement", "bml", "lwl", "vcb");
    yields.add(
        "mct",
        Message.of("balance.mct", units.trimUnit()),
        units.trimming(change),
        Message.of("balance.mct.how", DERRETT),
        YieldList.worked(
            "{0} × {1} ÷ {2} × {3}",
            massOf(displacement),
            units.length(gml),
            units.length(length),
            Si.show(1, units.trimUnit(), units.trimUnit())));
    if (!inputs.hasAll("lcb")) {
      return;
    }
    double trim = mass * (lcg - Si.value(inputs, "lcb", Unit.METRE)) / change;
    double lcb = Si.value(inputs, "lcb", Unit.METRE);
    yields.from("masses", "displacement", "bml", "lwl", "vcb", "lcb");
    length(
        "trim",
        "balance.trim",
        trim,
        Message.of("balance.trim.how", DERRETT),
        YieldList.worked(
            "{0} × ({1} − {2}) × {3} ÷ {4}",
            massOf(mass),
            units.length(lcg),
            units.length(lcb),
            Si.show(1, units.trimUnit(), units.trimUnit()),
            units.trimming(change)));
    if (inputs.hasAll("lcf")) {
      double aft = Si.value(inputs, "lcf", Unit.METRE) / length;
      yields.from("masses", "displacement", "bml", "lwl", "vcb", "lcb", "lcf");
      Quantity lcf = units.length(Si.value(inputs, "lcf", Unit.METRE));
      length(
          "trim_aft",
          "balance.trim.aft",
          -trim * aft,
          Message.of("balance.trim.aft.how", DERRETT),
          YieldList.worked("{0} × {1} ÷ {2}", units.length(-trim), lcf, units.length(length)));
      length(
          "trim_fore",
          "balance.trim.fore",
          trim * (1 - aft),
          Message.of("balance.trim.fore.how", DERRETT),
          YieldList.worked("{0} × (1 − {1} ÷ {2})", units.length(trim), lcf, units.length(length)));
    }
  }
}
