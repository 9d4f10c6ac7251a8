package chinelog.reckon.trade;

import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.util.ArrayList;
import java.util.List;

/**
 * What a hull displaces and how it floats, from its table of offsets: {@code hull-form}.
 *
 * <p>Half-breadths are integrated up each station and the areas of the stations along the hull,
 * both by a {@link FairCurve}: V = ∫ A dx, LCB = ∫ xA dx / V, VCB = ∫∫ 2yz dz dx / V, waterplane =
 * ∫ 2y dx, BM = ∫ ⅔y³ dx / V, longitudinal BM = (∫ 2x²y dx − A LCF²) / V. Derrett and Barrass, Ship
 * Stability for Masters and Mates, 5th edition (1999), chapters 10 and 12 to 14. Where the keel
 * leaves the water between two stations the waterline is ended there, the keel taken as straight.
 * What is fixed to her under water adds its volume, its moments and its skin; the coefficients are
 * those of the hull without it.
 */
final class HullForm {

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "hull-form",
              "The form of a hull from its table of offsets",
              parameters(),
              HullForm::of)
          .yielding(
              "draught", "form.draught",
              "hull_volume", "form.hull",
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
    all.add(Solids.withSkin());
    all.addAll(WaterDensity.PARAMETERS);
    return all;
  }

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    Offsets offsets = Offsets.read(inputs);
    double density = WaterDensity.of(inputs);
    double siding = Si.value(inputs, "siding", Unit.METRE, 0);
    Solids solids = Solids.read(inputs, true);
    double draught = draught(inputs, offsets, density, siding, solids.volume());
    solids.requireUnder(draught);
    Afloat hull = Afloat.at(offsets.stations(), draught, siding);
    Doubt doubt = new Doubt(offsets.stations(), hull, draught, siding);
    FormFigures figures = new FormFigures(offsets, hull, solids, doubt, draught);
    if (inputs.findQuantity("draught").isEmpty()) {
      figures.draught(Si.positive(inputs, "mass", Unit.KILOGRAM), density);
    }
    figures.floatingBy(inputs.findQuantity("mass").isPresent());
    figures.afloat(density, WaterDensity.said(inputs));
    figures.form();
    figures.stations();
    return figures.list();
  }

  private static List<Part> draw(Inputs inputs) throws TradeException, QuantityException {
    Offsets offsets = Offsets.read(inputs);
    return List.of(LinesPlan.draw(offsets, draught(inputs, offsets)));
  }

  private static List<Sketch> sketch(Inputs inputs) throws TradeException, QuantityException {
    Offsets offsets = Offsets.read(inputs);
    return List.of(LinesSketch.draw(offsets, draught(inputs, offsets)));
  }

  private static double draught(Inputs inputs, Offsets offsets)
      throws TradeException, QuantityException {
    double siding = Si.value(inputs, "siding", Unit.METRE, 0);
    double solid = Solids.read(inputs, true).volume();
    return draught(inputs, offsets, WaterDensity.of(inputs), siding, solid);
  }

  private static double draught(
      Inputs inputs, Offsets offsets, double density, double siding, double solid)
      throws TradeException, QuantityException {
    boolean byMass = inputs.findQuantity("mass").isPresent();
    if (byMass == inputs.findQuantity("draught").isPresent()) {
      throw new TradeException(
          byMass ? "mass" : "draught",
          byMass
              ? "The waterline is given twice, by draught and by mass."
              : "The waterline is given not at all.",
          "Give either draught or mass.");
    }
    if (!byMass) {
      return Si.value(inputs, "draught", Unit.METRE);
    }
    double volume = Si.positive(inputs, "mass", Unit.KILOGRAM) / density - solid;
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
}
