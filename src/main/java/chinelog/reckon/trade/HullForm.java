package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.List;

/**
 * What a hull displaces and how it floats, from its table of offsets: {@code hull-form}.
 *
 * <p>Section areas are integrated up each station, and they along the hull, by {@link Rule}: V = ∫
 * A dx, LCB = ∫ xA dx / V, VCB = ∫∫ 2yz dz dx / V, waterplane = ∫ 2y dx, BM = ∫ ⅔y³ dx / V,
 * longitudinal BM = (∫ 2x²y dx − A LCF²) / V. Derrett and Barrass, Ship Stability for Masters and
 * Mates, 5th edition (1999), chapters 10 and 12 to 14. Where the keel leaves the water between two
 * stations the waterline is ended there, the keel taken as straight.
 */
final class HullForm {

  private static final Message SOURCE = Message.of("source.derrett.10");

  static final TradeReckoning RECKONING =
      new TradeReckoning(
          "hull-form", "The form of a hull from its table of offsets", parameters(), HullForm::of);

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
    all.add(Offsets.SIDING);
    all.addAll(WaterDensity.PARAMETERS);
    return all;
  }

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    Offsets offsets = Offsets.read(inputs);
    double density = WaterDensity.of(inputs);
    double siding = Si.value(inputs, "siding", Unit.METRE, 0);
    double draught = draught(inputs, offsets, density, siding);
    Afloat hull = Afloat.at(offsets, draught, siding);
    Figures figures = new Figures(offsets.units(), hull.along().said());
    if (inputs.findQuantity("draught").isEmpty()) {
      figures.add(
          "draught",
          Message.of("form.draught"),
          figures.units.length(draught),
          Message.of("form.draught.how"));
    }
    afloat(figures, hull, density, WaterDensity.said(inputs));
    form(figures, hull, draught - offsets.lowest());
    stations(figures, hull, offsets);
    return figures.yields.list();
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
    if (Afloat.at(offsets, high, siding).volume() < volume) {
      throw new TradeException(
          "mass",
          "The hull displaces less than this mass when it is immersed as far as its offsets go.",
          "Give a smaller mass, or higher waterlines and the sheer in the table.");
    }
    for (int i = 0; i < 80; i++) {
      double middle = (low + high) / 2;
      if (immersed(offsets, middle) < 3 || Afloat.at(offsets, middle, siding).volume() < volume) {
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

  private static void afloat(Figures s, Afloat hull, double density, Message water)
      throws TradeException {
    double volume = hull.volume();
    s.add("volume", Message.of("form.volume"), s.units.volume(volume), s.along("form.volume.how"));
    s.add(
        "displacement",
        Message.of("form.displacement"),
        s.units.mass(volume * density),
        Message.of("form.displacement.how"),
        water);
    s.add("lcb", Message.of("form.lcb"), s.units.length(hull.lcb()), s.along("form.lcb.how"));
    s.add("vcb", Message.of("form.vcb"), s.units.length(hull.vcb()), s.along("form.vcb.how"));
    s.add(
        "waterplane",
        Message.of("form.waterplane"),
        s.units.area(hull.waterplane()),
        s.along("form.waterplane.how"));
    s.add("lcf", Message.of("form.lcf"), s.units.length(hull.lcf()), s.along("form.lcf.how"));
    s.add(
        "immersion",
        Message.of("form.sinks"),
        s.units.immersion(hull.waterplane() * density),
        Message.of("form.sinks.how"),
        water);
    s.add(
        "bm",
        Message.of("form.bm"),
        s.units.length(hull.acrossMoment() / volume),
        s.along("form.bm.how"));
    s.add(
        "bml",
        Message.of("form.bml"),
        s.units.length(hull.lengthMoment() / volume),
        s.along("form.bml.how"));
    s.add(
        "wetted_skin",
        Message.of("form.wetted"),
        s.units.area(hull.wettedSkin()),
        s.along("form.wetted.how"));
  }

  private static void form(Figures s, Afloat hull, double depth) throws TradeException {
    double block = hull.volume() / (hull.length() * hull.breadth() * depth);
    double midship = hull.greatestArea() / (hull.breadth() * depth);
    s.add("lwl", Message.of("form.lwl"), s.units.length(hull.length()), Message.of("form.lwl.how"));
    s.add(
        "bwl", Message.of("form.bwl"), s.units.length(hull.breadth()), Message.of("form.bwl.how"));
    s.add("cb", Message.of("form.cb"), Si.number(block), Message.of("form.cb.how", SOURCE));
    s.add("cm", Message.of("form.cm"), Si.number(midship), Message.of("form.cm.how", SOURCE));
    s.add(
        "cp", Message.of("form.cp"), Si.number(block / midship), Message.of("form.cp.how", SOURCE));
    s.add(
        "cw",
        Message.of("form.cw"),
        Si.number(hull.waterplane() / (hull.length() * hull.breadth())),
        Message.of("form.cw.how", SOURCE));
  }

  private static void stations(Figures s, Afloat hull, Offsets offsets) throws TradeException {
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
          s.units.area(wet.area()),
          Message.of("form.station.area.how", Rule.bySpacing(wet.z()).said(), SOURCE));
      s.add(
          "wet_girth_" + part,
          Message.of("form.station.wetted", wet.name()),
          s.units.length(2 * wet.girth()),
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

  private static final class Figures {
    private final ShopUnits units;
    private final Message rule;
    private final YieldList yields = new YieldList();

    Figures(ShopUnits units, Message rule) {
      this.units = units;
      this.rule = rule;
    }

    void add(String name, Message title, Quantity value, Message... method) {
      yields.add(name, title, value, method);
    }

    Message along(String method) {
      return Message.of(method, rule, SOURCE);
    }
  }
}
