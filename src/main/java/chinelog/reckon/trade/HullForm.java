package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
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

  private static final String SOURCE =
      " (Derrett and Barrass, Ship Stability for Masters and Mates, 5th edition, chapter 10).";

  static final TradeReckoning RECKONING =
      new TradeReckoning(
          "hull-form", "The form of a hull from its table of offsets", parameters(), HullForm::of);

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
      figures.add(
          "draught",
          "Draught",
          figures.units.length(draught),
          "The height of the waterline above the base line at which the hull displaces its mass,"
              + " found by halving the range.");
    }
    afloat(figures, density, WaterDensity.said(inputs));
    form(figures, hull, draught - offsets.lowest());
    stations(figures, hull, offsets, draught);
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

  private static void afloat(Figures s, double density, String water) throws TradeException {
    s.add(
        "volume",
        "Displaced volume",
        s.doubted(Afloat::volume, s.units::volume),
        s.by("The areas of the stations"));
    s.add(
        "displacement",
        "Displacement",
        s.doubted(h -> h.volume() * density, s.units::mass),
        "The displaced volume times the density of the water. " + water);
    s.add(
        "lcb",
        "Centre of buoyancy from the aft end",
        s.doubted(Afloat::lcb, s.units::length),
        s.by("The moments of the station areas, over the volume,"));
    s.add(
        "vcb",
        "Centre of buoyancy above the base line",
        s.doubted(Afloat::vcb, s.units::length),
        s.by("The moments of the station areas about the base line, over the volume,"));
    s.add(
        "waterplane",
        "Area of the waterplane",
        s.doubted(Afloat::waterplane, s.units::area),
        s.by("The breadths at the waterline"));
    s.add(
        "lcf",
        "Centre of the waterplane from the aft end",
        s.doubted(Afloat::lcf, s.units::length),
        s.by("The moments of the breadths, over the area of the waterplane,"));
    s.add(
        "immersion",
        "Mass that sinks it evenly",
        s.doubted(h -> h.waterplane() * density, s.units::immersion),
        "The area of the waterplane times the density of the water. " + water);
    s.add(
        "bm",
        "Metacentre above the centre of buoyancy",
        s.doubted(Afloat::bm, s.units::length),
        s.by("Two thirds of the cubes of the half-breadths, over the volume,"));
    s.add(
        "bml",
        "Longitudinal metacentre above the centre of buoyancy",
        s.doubted(Afloat::bml, s.units::length),
        s.by("The second moment of the waterplane about its centre, over the volume,"));
    s.add(
        "wetted_skin",
        "Wetted skin, both sides",
        s.doubted(Afloat::wettedSkin, s.units::area),
        s.by("The wetted girths, by chords and without allowance for the slope of the skin,"));
  }

  private static void form(Figures s, Afloat hull, double depth) throws TradeException {
    double block = hull.volume() / (hull.length() * hull.breadth() * depth);
    double midship = hull.greatestArea() / (hull.breadth() * depth);
    s.add(
        "lwl",
        "Length of the waterline",
        s.units.length(hull.length()),
        "From end to end of the waterline; between stations the keel is taken as straight.");
    s.add(
        "bwl",
        "Breadth of the waterline",
        s.units.length(hull.breadth()),
        "Twice the greatest half-breadth at the waterline among the stations.");
    s.add(
        "cb",
        "Block coefficient",
        Si.number(block),
        "Volume ÷ (length × breadth × depth of the water)" + SOURCE);
    s.add(
        "cm",
        "Coefficient of the fullest station",
        Si.number(midship),
        "Its immersed area ÷ (breadth × depth of the water)" + SOURCE);
    s.add(
        "cp",
        "Prismatic coefficient",
        Si.number(block / midship),
        "Volume ÷ (length × area of the fullest station)" + SOURCE);
    s.add(
        "cw",
        "Waterplane coefficient",
        Si.number(hull.waterplane() / (hull.length() * hull.breadth())),
        "Area of the waterplane ÷ (length × breadth)" + SOURCE);
  }

  private static void stations(Figures s, Afloat hull, Offsets offsets, double draught)
      throws TradeException {
    s.add(
        "skin",
        "Skin from keel to top, both sides",
        s.units.area(Skin.area(offsets.stations())),
        "The sum of flat triangles between stations, each divided into 40 equal girths; what lies"
            + " beyond the first and last station is left out.");
    for (Section wet : hull.wet()) {
      String part = Offsets.factPart(wet.name());
      s.add(
          "area_" + part,
          "Station " + wet.name() + ", immersed area",
          s.units.area(wet.area(draught)),
          "The breadths up the station, integrated along " + wet.shape().said() + SOURCE);
      s.add(
          "wet_girth_" + part,
          "Station " + wet.name() + ", wetted girth of both sides",
          s.units.length(2 * wet.girth(draught)),
          "The sum of the chords from point to point.");
    }
    for (Section whole : offsets.stations()) {
      s.add(
          "girth_" + Offsets.factPart(whole.name()),
          "Station " + whole.name() + ", girth of both sides",
          s.units.length(2 * whole.girth()),
          "The sum of the chords from point to point, from keel to top.");
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

    void add(String name, String title, Quantity value, String method) {
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

    String by(String what) {
      return what
          + " integrated along the hull on "
          + hull.along().said()
          + SOURCE
          + " The tolerance is an estimate: half of what the figure changes by when one station or"
          + " one height of the table is left out.";
    }
  }
}
