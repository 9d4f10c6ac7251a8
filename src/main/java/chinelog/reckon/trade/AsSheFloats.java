package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Draught, trim and heel of a hull with what is aboard, and its righting arms, from the form
 * itself: {@code afloat}.
 *
 * <p>The water bears her where the volume below it weighs what she weighs and its centre lies plumb
 * below hers. GZ = (yB − yG) cos φ + (zB − zG) sin φ at each heel, draught and trim being found
 * anew (free trim). Derrett and Barrass, Ship Stability for Masters and Mates, 5th edition (1999),
 * chapters 6 and 17 for the terms; for a box it is the closed form for upright sides.
 */
final class AsSheFloats {

  private static final int STEP = 10;

  private static final String[] BASIS = {
    "offsets",
    "origin",
    "breadths",
    "masses",
    "appendages",
    "siding",
    "water",
    "temperature",
    "density"
  };

  /** Curves along the hull that another rule would go by. */
  private static final List<FairCurve.Shape> OTHER_RULES =
      List.of(
          FairCurve.Shape.PLAIN,
          FairCurve.Shape.ELLIPTIC,
          FairCurve.Shape.BLUNT,
          FairCurve.Shape.MONOTONE);

  /** Figures of her as she lies, which is upright where her masses balance athwart. */
  private static final Set<String> UPRIGHT =
      Set.of("draught_aft", "draught_fore", "trim", "freeboard", "sinkage", "gm");

  /** Titles that are not named as their figures are. */
  private static final Map<String, String> TITLES =
      Map.of("draught_aft", "aft", "draught_fore", "fore");

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "afloat",
              "How she floats with what is aboard, and her righting arms",
              parameters(),
              AsSheFloats::of)
          .yielding(
              "mass", "afloat.mass",
              "draught_aft", "afloat.aft",
              "draught_fore", "afloat.fore",
              "trim", "afloat.trim",
              "heel", "afloat.heel",
              "freeboard", "afloat.freeboard",
              "sinkage", "afloat.sinkage",
              "gm", "afloat.gm",
              "gz_…", "afloat.gz",
              "range", "afloat.range")
          .sketching(AsSheFloats::sketch);

  private final Inputs inputs;
  private final ShopUnits units;
  private final YieldList yields = new YieldList();
  private final Unit massUnit;
  private final double density;
  private final Lying.Load load;
  private final double[] heels;
  private final Lying she;
  private final List<List<Lying>> otherOffsets;
  private final List<Lying> otherRules;

  private AsSheFloats(Inputs inputs, boolean doubts) throws TradeException, QuantityException {
    this.inputs = inputs;
    Offsets offsets = Offsets.read(inputs);
    units = offsets.units();
    density = WaterDensity.of(inputs);
    Columns columns = new Columns("masses", inputs.table("masses"));
    massUnit = columns.unit("mass");
    double[] m = columns.numbers("mass", Unit.KILOGRAM);
    for (int i = 0; i < m.length; i++) {
      if (m[i] < 0) {
        throw columns.at(i, "A mass is negative.", "Take out what is not aboard.");
      }
    }
    double mass = Arrays.stream(m).sum();
    if (mass <= 0) {
      throw new TradeException(
          "masses", "All masses together are zero.", "Give the mass of one item at least.");
    }
    load =
        new Lying.Load(
            mass,
            new double[] {
              mean(m, columns.numbers("x", Unit.METRE)),
              Math.abs(mean(m, columns.numbers("y", Unit.METRE, 0))),
              mean(m, columns.numbers("z", Unit.METRE))
            },
            mass / density,
            Solids.read(inputs, false),
            Si.value(inputs, "siding", Unit.METRE, 0));
    heels = heels();
    she = Lying.of(offsets.stations(), load, heels);
    otherOffsets = doubts ? otherOffsets(offsets.stations()) : List.of();
    otherRules = doubts ? otherRules(offsets.stations()) : List.of();
  }

  private static List<Parameter> parameters() {
    List<Parameter> all = new ArrayList<>();
    all.add(Offsets.TABLE);
    all.add(
        Parameter.table(
            "masses", "all that is aboard, ballast too", "item?", "mass", "x", "y?", "z"));
    all.add(Solids.plain());
    all.addAll(Offsets.MANNER);
    all.add(Offsets.SIDING);
    all.addAll(WaterDensity.PARAMETERS);
    all.add(
        Parameter.quantity("heel_most", "up to which righting arms are told", Si.DEGREE)
            .or("90 deg"));
    return all;
  }

  /** How she would lie without one station, and without one height or with other outlines. */
  private List<List<Lying>> otherOffsets(List<HullSection> stations) {
    Doubt.Reckoned<Lying> lying = set -> Lying.otherwise(set, load, heels, null);
    List<List<HullSection>> upAStation = new ArrayList<>(Doubt.lessHeights(stations));
    upAStation.addAll(Doubt.otherOutlines(stations));
    return List.of(
        Doubt.reckoned(Doubt.lessStations(stations), lying), Doubt.reckoned(upAStation, lying));
  }

  /** How she would lie along another curve through all stations. */
  private List<Lying> otherRules(List<HullSection> stations) {
    return OTHER_RULES.stream()
        .filter(shape -> shape != she.along())
        .flatMap(
            shape ->
                Doubt.reckoned(List.of(stations), all -> Lying.otherwise(all, load, heels, shape))
                    .stream())
        .toList();
  }

  /**
   * The greatest changes of all kinds added up, as heel and trim add to what is out.
   *
   * @param weight of another rule, up to 1
   */
  private double doubt(ToDoubleFunction<Lying> figure, ToDoubleFunction<FairCurve.Shape> weight) {
    double rules =
        otherRules.stream()
            .mapToDouble(o -> weight.applyAsDouble(o.along()) * Doubt.most(she, List.of(o), figure))
            .max()
            .orElse(0);
    return otherOffsets.stream().mapToDouble(o -> Doubt.most(she, o, figure)).sum() + rules;
  }

  /** Upright, another curve counts by how well it tells the areas of stations that are left out. */
  private double doubtUpright(ToDoubleFunction<Lying> figure) {
    return doubt(figure, she::weight);
  }

  /**
   * Heeled, it counts in full, as what is integrated then is no smoother than the cubes of the
   * breadths; but for the one that only a full end is like.
   */
  private double doubtHeeled(ToDoubleFunction<Lying> figure) {
    return doubt(figure, shape -> shape == FairCurve.Shape.BLUNT ? she.weight(shape) : 1);
  }

  private static double mean(double[] m, double[] lever) {
    double sum = 0;
    for (int i = 0; i < m.length; i++) {
      sum += m[i] * lever[i];
    }
    return sum / Arrays.stream(m).sum();
  }

  private double[] heels() throws TradeException, QuantityException {
    double most = Si.positive(inputs, "heel_most", Si.DEGREE, 90);
    if (most > 180) {
      throw new TradeException("heel_most", "Beyond 180° she is round again.", "Give less.");
    }
    return IntStream.rangeClosed(1, (int) Math.floor(most / STEP + 1e-9))
        .mapToDouble(i -> Math.toRadians(i * STEP))
        .toArray();
  }

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    AsSheFloats afloat = new AsSheFloats(inputs, true);
    afloat.lie();
    afloat.stands();
    afloat.arms();
    return afloat.yields.list();
  }

  private void doubted(
      String name, ToDoubleFunction<Lying> figure, Doubt.Shown shown, Message... method)
      throws TradeException {
    List<Message> all = new ArrayList<>(List.of(method));
    all.add(Message.of("afloat.doubt"));
    yields.add(
        name,
        Message.of("afloat." + TITLES.getOrDefault(name, name)),
        Doubt.doubted(
            figure.applyAsDouble(she),
            UPRIGHT.contains(name) && load.centre()[1] == 0
                ? doubtUpright(figure)
                : doubtHeeled(figure),
            shown),
        all.toArray(Message[]::new));
  }

  /** What is under water at a lie and where its centre is. */
  private Message under(Floating.Lie lie) throws TradeException {
    Inclined.Immersed wet = she.under(lie);
    return Message.of(
        "afloat.under",
        units.volume(wet.volume()),
        units.length(wet.x()),
        units.length(wet.y()),
        units.length(wet.z()));
  }

  private void lie() throws TradeException, QuantityException {
    Floating.Lie rest = she.rest();
    yields.from("masses");
    yields.add(
        "mass",
        Message.of("afloat.mass"),
        Si.show(load.mass(), Unit.KILOGRAM, massUnit),
        masses(),
        Message.of(
            "afloat.centre",
            units.length(load.centre()[0]),
            units.length(load.centre()[1]),
            units.length(load.centre()[2])));
    yields.from(BASIS);
    Message how = Message.of("afloat.how");
    Message under = under(rest);
    double[] ends = Offsets.read(inputs).stationX();
    doubted("draught_aft", Lying::draughtAft, units::length, how, under, level(rest, ends[0]));
    doubted(
        "draught_fore",
        Lying::draughtFore,
        units::length,
        how,
        under,
        level(rest, ends[ends.length - 1]));
    doubted(
        "trim",
        Lying::trim,
        units::length,
        YieldList.worked(
            "{0} − {1}", units.length(she.draughtFore()), units.length(she.draughtAft())));
    doubted(
        "heel",
        s -> s.rest().heel(),
        AsSheFloats::degrees,
        how,
        Message.of("afloat.heel.how"),
        under,
        arm(rest));
  }

  private Message masses() throws TradeException, QuantityException {
    List<Object> parts = new ArrayList<>();
    for (double m : new Columns("masses", inputs.table("masses")).numbers("mass", Unit.KILOGRAM)) {
      if (!parts.isEmpty()) {
        parts.add(" + ");
      }
      parts.add(Si.show(m, Unit.KILOGRAM, massUnit));
    }
    return YieldList.joined(parts.toArray());
  }

  /** The height of the water above the base line where a station stands. */
  private Message level(Floating.Lie lie, double x) throws TradeException {
    return YieldList.worked(
        "(d + s x) ÷ cos φ = ({0} + {1} × {2}) ÷ cos {3}",
        units.length(lie.depth()), Si.number(lie.slope()), units.length(x), degrees(lie.heel()));
  }

  private void stands() throws TradeException {
    Floating.Lie rest = she.rest();
    HullSection lowest = she.lowest();
    doubted(
        "freeboard",
        Lying::freeboard,
        units::length,
        Message.of("afloat.freeboard.how"),
        YieldList.worked(
            "z cos φ − y sin φ − d − s x = {0} × cos {1} − {2} × sin {1} − {3} − {4} × {5}",
            units.length(lowest.top()),
            degrees(rest.heel()),
            units.length(lowest.half(lowest.top())),
            units.length(rest.depth()),
            Si.number(rest.slope()),
            units.length(lowest.x())));
    doubted(
        "sinkage",
        s -> 0.01 / (density * s.plane()),
        units::length,
        YieldList.worked(
            "{0} ÷ ({1} × {2})",
            Si.show(0.01, Unit.KILOGRAM, Unit.GRAM),
            units.area(she.plane()),
            units.density(density)));
    doubted(
        "gm",
        Lying::gm,
        units::length,
        Message.of("afloat.gm.how"),
        YieldList.worked(
            "{0} ÷ {1} + {2}",
            units.second(she.second()),
            units.volume(load.borne()),
            units.length(she.centreAbove())));
  }

  private static List<Sketch> sketch(Inputs inputs) throws TradeException, QuantityException {
    AsSheFloats afloat = new AsSheFloats(inputs, false);
    Columns columns = new Columns("masses", inputs.table("masses"));
    double[] m = columns.numbers("mass", Unit.KILOGRAM);
    double[] x = columns.numbers("x", Unit.METRE);
    double[] z = columns.numbers("z", Unit.METRE);
    boolean named = columns.find("item").isPresent();
    List<BalanceSketch.Item> items = new ArrayList<>();
    for (int i = 0; i < m.length; i++) {
      Quantity mass = Si.show(m[i], Unit.KILOGRAM, columns.unit("mass"));
      String name = named ? columns.text(i, "item") : "";
      items.add(new BalanceSketch.Item(name, mass, m[i], x[i], z[i]));
    }
    Offsets offsets = Offsets.read(inputs);
    double[] heels = DoubleStream.concat(DoubleStream.of(0), Arrays.stream(afloat.heels)).toArray();
    Lying she = Lying.otherwise(offsets.stations(), afloat.load, heels, null);
    List<BalanceSketch.Arm> arms = new ArrayList<>();
    for (int i = 0; i < heels.length; i++) {
      arms.add(new BalanceSketch.Arm(i * STEP, she.arm(i)));
    }
    Floating.Lie upright = she.lie(0);
    Inclined.Immersed wet = she.under(upright);
    double[] ends = offsets.stationX();
    return List.of(
        BalanceSketch.draw(
            offsets,
            items,
            new double[] {afloat.load.centre()[0], afloat.load.centre()[2]},
            new double[] {wet.x(), wet.z()},
            new double[] {
              upright.depth() + upright.slope() * ends[0],
              upright.depth() + upright.slope() * ends[ends.length - 1]
            },
            arms));
  }

  private static Quantity degrees(double rad) throws TradeException {
    return Si.show(Math.toDegrees(rad), Si.DEGREE, Si.DEGREE);
  }

  /** (yB − yG) cos φ + (zB − zG) sin φ, the figures put in. */
  private Message arm(Floating.Lie lie) throws TradeException {
    Inclined.Immersed wet = she.under(lie);
    return YieldList.worked(
        "({0} − {1}) × cos {2} + ({3} − {4}) × sin {2}",
        units.length(wet.y()),
        units.length(load.centre()[1]),
        degrees(lie.heel()),
        units.length(wet.z()),
        units.length(load.centre()[2]));
  }

  private void arms() throws TradeException {
    yields.from(Stream.concat(Stream.of(BASIS), Stream.of("heel_most")).toArray(String[]::new));
    Message how = Message.of("afloat.gz.how");
    Message doubts = Message.of("afloat.doubt");
    for (int i = 0; i < heels.length; i++) {
      int at = i;
      int angle = (i + 1) * STEP;
      yields.add(
          "gz_" + angle,
          Message.of("afloat.gz", angle),
          Doubt.doubted(she.arm(i), doubtHeeled(s -> s.arm(at)), units::length),
          how,
          under(she.lie(i)),
          arm(she.lie(i)),
          doubts);
    }
    if (!Double.isNaN(she.range())) {
      doubted(
          "range",
          Lying::range,
          AsSheFloats::degrees,
          Message.of("afloat.range.how"),
          under(she.upset()),
          arm(she.upset()));
    }
  }
}
