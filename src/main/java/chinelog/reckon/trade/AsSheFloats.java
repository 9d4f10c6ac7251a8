package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

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

  private final ShopUnits units;
  private final YieldList yields = new YieldList();
  private final Offsets offsets;
  private final Floating floating;
  private final double mass;
  private final double[] centre;
  private final double density;

  private AsSheFloats(Inputs inputs) throws TradeException, QuantityException {
    offsets = Offsets.read(inputs);
    units = offsets.units();
    density = WaterDensity.of(inputs);
    Columns columns = new Columns("masses", inputs.table("masses"));
    double[] m = columns.numbers("mass", Unit.KILOGRAM);
    for (int i = 0; i < m.length; i++) {
      if (m[i] < 0) {
        throw columns.at(i, "A mass is negative.", "Take out what is not aboard.");
      }
    }
    mass = Arrays.stream(m).sum();
    if (mass <= 0) {
      throw new TradeException(
          "masses", "All masses together are zero.", "Give the mass of one item at least.");
    }
    centre =
        new double[] {
          mean(m, columns.numbers("x", Unit.METRE)),
          mean(m, columns.numbers("y", Unit.METRE, 0)),
          mean(m, columns.numbers("z", Unit.METRE))
        };
    double[] solid = solid(inputs);
    double siding = Si.value(inputs, "siding", Unit.METRE, 0);
    double borne = mass / density;
    double depth = upright(borne - solid[0], siding);
    Afloat upright = Afloat.at(offsets.stations(), depth, siding);
    double[] x = offsets.stationX();
    floating =
        new Floating(
            new Inclined(offsets.stations(), upright.along()),
            borne,
            solid[0],
            new double[] {solid[1], solid[2]},
            new double[] {centre[0], Math.abs(centre[1]), centre[2]},
            x[x.length - 1] - x[0],
            depth);
  }

  private static List<Parameter> parameters() {
    List<Parameter> all = new ArrayList<>();
    all.add(Offsets.TABLE);
    all.add(
        Parameter.table(
            "masses", "all that is aboard, ballast too", "item?", "mass", "x", "y?", "z"));
    all.add(
        Parameter.table(
                "appendages", "solids under water, such as a foil's", "item?", "volume", "x", "z")
            .or("none"));
    all.addAll(Offsets.MANNER);
    all.add(Offsets.SIDING);
    all.addAll(WaterDensity.PARAMETERS);
    all.add(
        Parameter.quantity("heel_most", "up to which righting arms are told", Si.DEGREE)
            .or("90 deg"));
    return all;
  }

  private double mean(double[] m, double[] lever) {
    double sum = 0;
    for (int i = 0; i < m.length; i++) {
      sum += m[i] * lever[i];
    }
    return sum / mass;
  }

  /** Volume of the appendages and their centre, x and z. */
  private static double[] solid(Inputs inputs) throws TradeException, QuantityException {
    double[] sum = new double[3];
    if (inputs.findTable("appendages").isPresent()) {
      Columns columns = new Columns("appendages", inputs.table("appendages"));
      double[] volume = columns.numbers("volume", Si.M3);
      double[] x = columns.numbers("x", Unit.METRE);
      double[] z = columns.numbers("z", Unit.METRE);
      for (int i = 0; i < volume.length; i++) {
        if (volume[i] < 0) {
          throw columns.at(i, "A volume is negative.", "Give 0 or more.");
        }
        sum[0] += volume[i];
        sum[1] += volume[i] * x[i];
        sum[2] += volume[i] * z[i];
      }
      if (sum[0] > 0) {
        sum[1] /= sum[0];
        sum[2] /= sum[0];
      }
    }
    return sum;
  }

  private double upright(double volume, double siding) throws TradeException {
    double low = offsets.lowest();
    double high = offsets.highest();
    if (volume <= 0 || Afloat.at(offsets.stations(), high, siding).volume() < volume) {
      throw new TradeException(
          "masses",
          volume <= 0
              ? "The appendages alone displace more than is aboard."
              : "She weighs more than the hull displaces when it is immersed to the deck.",
          "Look at the masses, or give higher waterlines and the sheer in the offsets.");
    }
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      long wet = offsets.stations().stream().filter(s -> s.keel() < middle - 1e-9).count();
      if (wet < 3 || Afloat.at(offsets.stations(), middle, siding).volume() < volume) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    AsSheFloats she = new AsSheFloats(inputs);
    she.lie(inputs);
    return she.yields.list();
  }

  private void length(String name, double value, Message... method) throws TradeException {
    yields.add(name, Message.of("afloat." + name), units.length(value), method);
  }

  private void lie(Inputs inputs) throws TradeException, QuantityException {
    Message how = Message.of("afloat.how");
    Unit massUnit = new Columns("masses", inputs.table("masses")).unit("mass");
    yields.from("masses");
    yields.add(
        "mass",
        Message.of("afloat.mass"),
        Si.show(mass, Unit.KILOGRAM, massUnit),
        Message.of(
            "afloat.centre",
            units.length(centre[0]),
            units.length(centre[1]),
            units.length(centre[2])));
    yields.from("offsets", "masses", "appendages", "siding", "water", "temperature", "density");
    double heel = centre[1] == 0 ? 0 : heel();
    Floating.Lie lie = floating.at(heel);
    double[] x = offsets.stationX();
    double aft = (lie.depth() + lie.slope() * x[0]) / Math.cos(heel);
    double fore = (lie.depth() + lie.slope() * x[x.length - 1]) / Math.cos(heel);
    yields.add("draught_aft", Message.of("afloat.aft"), units.length(aft), how);
    yields.add("draught_fore", Message.of("afloat.fore"), units.length(fore), how);
    length("trim", fore - aft, YieldList.worked(units.length(fore), " − ", units.length(aft)));
    yields.add(
        "heel", Message.of("afloat.heel"), degrees(heel), how, Message.of("afloat.heel.how"));
    length("freeboard", freeboard(lie), Message.of("afloat.freeboard.how"));
    double plane = floating.waterplane(lie);
    length(
        "sinkage",
        0.01 / (density * plane),
        YieldList.worked(
            Si.show(0.01, Unit.KILOGRAM, Unit.GRAM),
            " ÷ (",
            units.area(plane),
            " × ",
            units.density(density),
            ")"));
    double small = Math.toRadians(0.5);
    double gm = (floating.at(heel + small).arm() - floating.at(heel - small).arm()) / (2 * small);
    length("gm", gm, Message.of("afloat.gm.how"));
    floating.at(heel);
    arms(inputs, heel);
  }

  private static List<Sketch> sketch(Inputs inputs) throws TradeException, QuantityException {
    AsSheFloats she = new AsSheFloats(inputs);
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
    Floating.Lie lie = she.floating.at(0);
    double[] ends = she.offsets.stationX();
    return List.of(
        BalanceSketch.draw(
            she.offsets,
            items,
            new double[] {she.centre[0], she.centre[2]},
            she.floating.buoyancy(lie),
            new double[] {
              lie.depth() + lie.slope() * ends[0], lie.depth() + lie.slope() * ends[ends.length - 1]
            },
            she.armsTo(Si.positive(inputs, "heel_most", Si.DEGREE, 90))));
  }

  private List<BalanceSketch.Arm> armsTo(double most) throws TradeException {
    List<BalanceSketch.Arm> arms = new ArrayList<>();
    for (int angle = 0; angle <= most + 1e-9; angle += STEP) {
      arms.add(new BalanceSketch.Arm(angle, floating.at(Math.toRadians(angle)).arm()));
    }
    return arms;
  }

  private static Quantity degrees(double rad) throws TradeException {
    return Si.show(Math.toDegrees(rad), Si.DEGREE, Si.DEGREE);
  }

  /** Where she comes to rest when her masses do not balance athwart. */
  private double heel() throws TradeException {
    double low = 0;
    double high = 0;
    do {
      high += Math.toRadians(5);
      if (high > Math.PI / 2) {
        throw new TradeException(
            "masses", "She does not stand up with these masses.", "Move mass down or inboard.");
      }
    } while (floating.at(high).arm() < 0);
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      if (floating.at(middle).arm() < 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  private double freeboard(Floating.Lie lie) {
    double least = Double.MAX_VALUE;
    for (Section s : offsets.stations()) {
      double top = s.top() * Math.cos(lie.heel()) - s.half(s.top()) * Math.sin(lie.heel());
      least = Math.min(least, top - lie.depth() - lie.slope() * s.x());
    }
    return least;
  }

  private void arms(Inputs inputs, double rest) throws TradeException, QuantityException {
    double most = Si.positive(inputs, "heel_most", Si.DEGREE, 90);
    if (most > 180) {
      throw new TradeException("heel_most", "Beyond 180° she is round again.", "Give less.");
    }
    yields.from(
        "offsets",
        "masses",
        "appendages",
        "siding",
        "water",
        "temperature",
        "density",
        "heel_most");
    double before = rest;
    double vanishing = Double.NaN;
    for (int angle = STEP; angle <= most + 1e-9; angle += STEP) {
      double heel = Math.toRadians(angle);
      double arm = floating.at(heel).arm();
      yields.add(
          "gz_" + angle,
          Message.of("afloat.gz", angle),
          units.length(arm),
          Message.of("afloat.gz.how"));
      if (Double.isNaN(vanishing) && heel > rest && arm <= 0) {
        vanishing = between(before, heel);
        floating.at(heel);
      }
      before = heel;
    }
    if (!Double.isNaN(vanishing)) {
      yields.add(
          "range", Message.of("afloat.range"), degrees(vanishing), Message.of("afloat.range.how"));
    }
  }

  private double between(double upright, double beyond) throws TradeException {
    double low = upright;
    double high = beyond;
    for (int i = 0; i < 30; i++) {
      double middle = (low + high) / 2;
      if (floating.at(middle).arm() > 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }
}
