package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * What a hull displaces and how it floats, from its table of offsets: {@code hull-form}.
 *
 * <p>Half-breadths are integrated up each station and the areas of the stations along the hull,
 * both by a {@link FairCurve}: V = ∫ A dx, LCB = ∫ xA dx / V, VCB = ∫∫ 2yz dz dx / V, waterplane =
 * ∫ 2y dx, BM = ∫ ⅔y³ dx / V, longitudinal BM = (∫ 2x²y dx − A LCF²) / V. Derrett and Barrass, Ship
 * Stability for Masters and Mates, 5th edition (1999), chapters 10 and 12 to 14. Where the keel
 * leaves the water between two stations the waterline is ended there, the keel taken as straight.
 */
final class HullForm {

  private static final Message SOURCE = Message.of("source.derrett.10");

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "hull-form",
              "The form of a hull from its table of offsets",
              parameters(),
              HullForm::of)
          .yielding(
              "draught", "form.draught",
              "volume", "form.volume",
              "displacement", "form.displacement",
              "lcb", "form.lcb",
              "vcb", "form.vcb",
              "waterplane", "form.waterplane",
              "lcf", "form.lcf",
              "immersion", "form.sinks",
              "bm", "form.bm",
              "bml", "form.bml",
              "wetted_skin", "form.wetted",
              "lwl", "form.lwl",
              "bwl", "form.bwl",
              "cb", "form.cb",
              "cm", "form.cm",
              "cp", "form.cp",
              "cw", "form.cw",
              "skin", "form.skin",
              "area_…", "form.station.area",
              "wet_girth_…", "form.station.wetted",
              "girth_…", "form.station.girth")
          .drawing(HullForm::draw)
          .sketching(HullForm::sketch);

  /** A reckoned figure is shown to so many digits. */
  private static final int DIGITS_SHOWN = 4;

  private HullForm() {}

  private static List<Parameter> parameters() {
    List<Parameter> all = new ArrayList<>();
    all.add(Offsets.TABLE);
    all.add(
        Parameter.quantity("draught", "height of the waterline above the base line", Unit.METRE)
            .or("the draught at which the hull displaces its mass"));
    all.add(
        Parameter.quantity("mass", "of the hull afloat, in place of draught", Unit.KILOGRAM)
            .or("what it displaces at its draught"));
    all.addAll(Offsets.MANNER);
    all.add(Offsets.SIDING);
    all.addAll(WaterDensity.PARAMETERS);
    return all;
  }

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    Offsets offsets = Offsets.read(inputs);
    double density = WaterDensity.of(inputs);
    double siding = Si.value(inputs, "siding", Unit.METRE, 0);
    double draught = draught(inputs, offsets, density, siding);
    Afloat hull = Afloat.at(offsets.stations(), draught, siding);
    Doubt doubt = new Doubt(offsets.stations(), hull, draught, siding);
    Figures figures = new Figures(offsets.units(), hull, doubt);
    if (inputs.findQuantity("draught").isEmpty()) {
      figures.floating(true);
      figures.add(
          "draught",
          Message.of("form.draught"),
          figures.units.length(draught),
          Message.of("form.draught.how"));
    }
    figures.floating(inputs.findQuantity("mass").isPresent());
    afloat(figures, density, WaterDensity.said(inputs));
    form(figures, hull, draught - offsets.lowest());
    stations(figures, hull, offsets, draught);
    return figures.yields.list();
  }

  private static List<Part> draw(Inputs inputs) throws TradeException, QuantityException {
    Offsets offsets = Offsets.read(inputs);
    double siding = Si.value(inputs, "siding", Unit.METRE, 0);
    double draught = draught(inputs, offsets, WaterDensity.of(inputs), siding);
    return List.of(LinesPlan.draw(offsets, draught));
  }

  private static List<Sketch> sketch(Inputs inputs) throws TradeException, QuantityException {
    Offsets offsets = Offsets.read(inputs);
    double siding = Si.value(inputs, "siding", Unit.METRE, 0);
    double draught = draught(inputs, offsets, WaterDensity.of(inputs), siding);
    return List.of(LinesSketch.draw(offsets, draught));
  }

  private static double draught(Inputs inputs, Offsets offsets, double density, double siding)
      throws TradeException, QuantityException {
    boolean byMass = inputs.findQuantity("mass").isPresent();
    if (byMass == inputs.findQuantity("draught").isPresent()) {
      throw new TradeException(
          byMass ? "mass" : "draught",
          "The waterline is given " + (byMass ? "twice, by draught and by mass." : "not at all."),
          "Give either draught or mass.");
    }
    if (!byMass) {
      return Si.value(inputs, "draught", Unit.METRE);
    }
    double volume = Si.positive(inputs, "mass", Unit.KILOGRAM) / density;
    double low = offsets.lowest();
    double high = offsets.highest();
    if (Afloat.at(offsets.stations(), high, siding).volume() < volume) {
      throw new TradeException(
          "mass",
          "The hull displaces less than this mass when it is immersed as far as its offsets go.",
          "Give a smaller mass, or higher waterlines and the sheer in the table.");
    }
    for (int i = 0; i < 80; i++) {
      double middle = (low + high) / 2;
      if (immersed(offsets, middle) < 3
          || Afloat.at(offsets.stations(), middle, siding).volume() < volume) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  private static long immersed(Offsets offsets, double height) {
    return offsets.stations().stream().filter(s -> s.keel() < height - 1e-9).count();
  }

  private static void afloat(Figures s, double density, Message water) throws TradeException {
    s.add(
        "volume",
        Message.of("form.volume"),
        s.doubted(Afloat::volume, s.units::volume),
        s.along("form.volume.how", s.stations()));
    s.floating(true);
    s.add(
        "displacement",
        Message.of("form.displacement"),
        s.doubted(h -> h.volume() * density, s.units::mass),
        Message.of("form.displacement.how"),
        YieldList.worked(s.units.volume(s.hull.volume()), " × ", s.units.density(density)),
        water,
        Message.of("form.volume.how", s.hull.along().said(), SOURCE),
        Message.of("form.doubt"));
    s.floating(false);
    s.add(
        "lcb",
        Message.of("form.lcb"),
        s.doubted(Afloat::lcb, s.units::length),
        s.along("form.lcb.how"));
    s.add(
        "vcb",
        Message.of("form.vcb"),
        s.doubted(Afloat::vcb, s.units::length),
        s.along("form.vcb.how"));
    s.add(
        "waterplane",
        Message.of("form.waterplane"),
        s.doubted(Afloat::waterplane, s.units::area),
        s.along("form.waterplane.how"));
    s.add(
        "lcf",
        Message.of("form.lcf"),
        s.doubted(Afloat::lcf, s.units::length),
        s.along("form.lcf.how"));
    s.floating(true);
    s.add(
        "immersion",
        Message.of("form.sinks"),
        s.doubted(h -> h.waterplane() * density, s.units::immersion),
        Message.of("form.sinks.how"),
        YieldList.worked(s.units.area(s.hull.waterplane()), " × ", s.units.density(density)),
        water);
    s.floating(false);
    s.add(
        "bm",
        Message.of("form.bm"),
        s.doubted(Afloat::bm, s.units::length),
        s.along(
            "form.bm.how",
            YieldList.worked(
                "I ÷ V = ",
                s.units.second(s.hull.acrossMoment()),
                " ÷ ",
                s.units.volume(s.hull.volume()))));
    s.add(
        "bml",
        Message.of("form.bml"),
        s.doubted(Afloat::bml, s.units::length),
        s.along(
            "form.bml.how",
            YieldList.worked(
                "I ÷ V = ",
                s.units.second(s.hull.lengthMoment()),
                " ÷ ",
                s.units.volume(s.hull.volume()))));
    s.add(
        "wetted_skin",
        Message.of("form.wetted"),
        s.doubted(Afloat::wettedSkin, s.units::area),
        Message.of("form.wetted.how"),
        Message.of("form.doubt"));
  }

  private static void form(Figures s, Afloat hull, double depth) throws TradeException {
    double block = hull.volume() / (hull.length() * hull.breadth() * depth);
    double midship = hull.greatestArea() / (hull.breadth() * depth);
    s.add("lwl", Message.of("form.lwl"), s.units.length(hull.length()), Message.of("form.lwl.how"));
    s.add(
        "bwl", Message.of("form.bwl"), s.units.length(hull.breadth()), Message.of("form.bwl.how"));
    Quantity volume = s.units.volume(hull.volume());
    Quantity fullest = s.units.area(hull.greatestArea());
    Quantity length = s.units.length(hull.length());
    Quantity breadth = s.units.length(hull.breadth());
    Quantity deep = s.units.length(depth);
    s.add(
        "cb",
        Message.of("form.cb"),
        Si.number(block),
        Message.of("form.cb.how", SOURCE),
        YieldList.worked(volume, " ÷ (", length, " × ", breadth, " × ", deep, ")"));
    s.add(
        "cm",
        Message.of("form.cm"),
        Si.number(midship),
        Message.of("form.cm.how", SOURCE),
        YieldList.worked(fullest, " ÷ (", breadth, " × ", deep, ")"));
    s.add(
        "cp",
        Message.of("form.cp"),
        Si.number(block / midship),
        Message.of("form.cp.how", SOURCE),
        YieldList.worked(volume, " ÷ (", length, " × ", fullest, ")"));
    s.add(
        "cw",
        Message.of("form.cw"),
        Si.number(hull.waterplane() / (hull.length() * hull.breadth())),
        Message.of("form.cw.how", SOURCE),
        YieldList.worked(s.units.area(hull.waterplane()), " ÷ (", length, " × ", breadth, ")"));
  }

  private static void stations(Figures s, Afloat hull, Offsets offsets, double draught)
      throws TradeException {
    s.add(
        "skin",
        Message.of("form.skin"),
        s.units.area(Skin.area(offsets.stations())),
        Message.of("form.skin.how"));
    for (Section wet : hull.wet()) {
      String part = Offsets.factPart(wet.name());
      s.add(
          "area_" + part,
          Message.of("form.station.area", wet.name()),
          s.units.area(wet.area(draught)),
          Message.of("form.station.area.how", wet.shape().said(), SOURCE));
      s.add(
          "wet_girth_" + part,
          Message.of("form.station.wetted", wet.name()),
          s.units.length(2 * wet.girth(draught)),
          Message.of("form.station.wetted.how"));
    }
    for (Section whole : offsets.stations()) {
      s.add(
          "girth_" + Offsets.factPart(whole.name()),
          Message.of("form.station.girth", whole.name()),
          s.units.length(2 * whole.girth()),
          Message.of("form.station.girth.how"));
    }
  }

  @FunctionalInterface
  private interface Shown {
    Quantity of(double si) throws TradeException;
  }

  private static final class Figures {
    private final ShopUnits units;
    private final Afloat hull;
    private final Doubt doubt;
    private final YieldList yields = new YieldList();

    Figures(ShopUnits units, Afloat hull, Doubt doubt) {
      this.units = units;
      this.hull = hull;
      this.doubt = doubt;
    }

    void add(String name, Message title, Quantity value, Message... method) {
      yields.add(name, title, value, method);
    }

    /** A figure with its doubt as tolerance, where that reaches half of the last digit shown. */
    Quantity doubted(ToDoubleFunction<Afloat> figure, Shown shown) throws TradeException {
      double value = figure.applyAsDouble(hull);
      double spread = doubt.of(figure);
      double digit = Math.pow(10, Math.floor(Math.log10(Math.abs(value))) + 1 - DIGITS_SHOWN);
      Quantity quantity = shown.of(value);
      try {
        return spread < digit / 2 ? quantity : quantity.withTolerance(shown.of(spread));
      } catch (QuantityException e) {
        throw new IllegalStateException("a unit did not agree with itself", e);
      }
    }

    /** Whether what follows rests on the water besides the hull. */
    void floating(boolean water) {
      yields.from(
          water
              ? new String[] {
                "offsets",
                "origin",
                "breadths",
                "draught",
                "mass",
                "siding",
                "water",
                "temperature",
                "density"
              }
              : new String[] {"offsets", "origin", "breadths", "draught", "mass", "siding"});
    }

    Message[] along(String method, Message... figures) {
      List<Message> all = new ArrayList<>();
      all.add(Message.of(method, hull.along().said(), SOURCE));
      all.addAll(List.of(figures));
      all.add(Message.of("form.doubt"));
      return all.toArray(Message[]::new);
    }

    /** The areas of the stations with where they stand. */
    Message stations() throws TradeException {
      List<Object> parts = new ArrayList<>();
      double[] x = hull.nodes();
      for (int i = 0; i < x.length; i++) {
        parts.add(i == 0 ? "x, A: " : "; ");
        parts.add(units.length(x[i]));
        parts.add(", ");
        parts.add(units.area(hull.nodeArea(i)));
      }
      return YieldList.worked(parts.toArray());
    }
  }
}
