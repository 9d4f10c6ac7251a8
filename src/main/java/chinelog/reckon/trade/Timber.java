package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;

/** What strips to buy or cut, and what becomes of them when they are faired. */
final class Timber {

  private static final String FAIRING =
      "Fairing takes off a quarter to a third of the planking (common practice, no source).";

  private Timber() {}

  static void add(YieldList yields, Inputs inputs, Girths girths, long strips)
      throws TradeException, QuantityException {
    double wastage = Si.share(inputs, "wastage", 0.1);
    ShopUnits units = girths.units();
    double needed = 2 * strips * girths.run();
    double bought = needed / (1 - wastage);
    yields.add(
        "run",
        "Length of one strip",
        units.length(girths.run()),
        girths.stations().isEmpty()
            ? "Straight from the first station to the last."
            : "Along the sheer, by chords from station to station.");
    yields.add(
        "strip_length",
        "Length of strip to buy",
        units.run(bought),
        "Both sides' strips times the length of one, over what is left of each metre when the"
            + " wastage is cut away: needed ÷ (1 − wastage). Those that stop short are counted in"
            + " full.");
    boolean cut = inputs.findQuantity("sheet_width").isPresent();
    if (cut && inputs.findQuantity("stock_length").isEmpty()) {
      throw new TradeException(
          "sheet_width",
          "It is not said how long the strips are that a sheet gives.",
          "Give stock_length, the length of the sheet.");
    }
    if (inputs.findQuantity("stock_length").isPresent()) {
      double stock = Si.positive(inputs, "stock_length", Unit.METRE);
      long pieces = Planking.ceil(bought / stock);
      yields.add(
          "pieces",
          "Strips to buy",
          Quantity.of(pieces, Unit.ONE),
          "The length to buy over the length of one, rounded up; short ends are scarfed on.");
      sheets(yields, inputs, pieces);
    }
    thickness(yields, inputs, girths);
  }

  private static void sheets(YieldList yields, Inputs inputs, long pieces)
      throws TradeException, QuantityException {
    if (inputs.findQuantity("sheet_width").isEmpty()) {
      return;
    }
    double width = Si.positive(inputs, "strip_width", Unit.METRE);
    double sheet = Si.positive(inputs, "sheet_width", Unit.METRE);
    double kerf = Si.value(inputs, "kerf", Unit.METRE, 0);
    if (kerf < 0) {
      throw new TradeException("kerf", "A saw's kerf cannot be negative.", "Give 0 or more.");
    }
    long each = (long) Math.floor((sheet + kerf) / (width + kerf) + 1e-9);
    if (each == 0) {
      throw new TradeException(
          "sheet_width", "The sheet is narrower than a strip.", "Give a wider sheet.");
    }
    yields.add(
        "strips_per_sheet",
        "Strips from one sheet",
        Quantity.of(each, Unit.ONE),
        "⌊(sheet + kerf) ÷ (strip + kerf)⌋: the last strip needs no cut beside it.");
    yields.add(
        "sheets",
        "Sheets to cut",
        Quantity.of(Planking.ceil((double) pieces / each), Unit.ONE),
        "Strips to buy over strips from one sheet, rounded up.");
  }

  private static void thickness(YieldList yields, Inputs inputs, Girths girths)
      throws TradeException, QuantityException {
    if (inputs.findQuantity("strip_thickness").isEmpty()) {
      return;
    }
    Quantity given = inputs.quantity("strip_thickness");
    double thick = Si.positive(inputs, "strip_thickness", Unit.METRE);
    faired(yields, "faired_most", "a quarter", given, 3.0 / 4);
    faired(yields, "faired_least", "a third", given, 2.0 / 3);
    if (inputs.findQuantity("density").isPresent()) {
      double mass = girths.area() * thick * Si.positive(inputs, "density", Si.KG_M3);
      yields.add(
          "mass",
          "Mass of the planking before fairing",
          girths.units().mass(mass),
          "The skin of both sides times thickness times density.");
      yields.add(
          "mass_faired_most",
          "Mass of the planking when a quarter is sanded off",
          girths.units().mass(mass * 3 / 4),
          FAIRING);
      yields.add(
          "mass_faired_least",
          "Mass of the planking when a third is sanded off",
          girths.units().mass(mass * 2 / 3),
          FAIRING);
    }
  }

  /** Thickness left, and for inches the sixty-fourth that is nearest to it, with its error. */
  private static void faired(
      YieldList yields, String name, String share, Quantity given, double left)
      throws TradeException, QuantityException {
    double thick = given.doubleIn(given.unit()) * left;
    yields.add(
        name,
        "Thickness when " + share + " is sanded off",
        Si.show(thick, given.unit(), given.unit()),
        FAIRING);
    if (given.unit().equals(Unit.INCH)) {
      double nearest = Math.floor(thick * 64 + 0.5) / 64;
      yields.add(
          name + "_64th",
          "The same to the nearest 1/64 in",
          Si.show(nearest, Unit.INCH, Unit.INCH),
          "Rounded to the nearest 1/64 in, halves upward. " + FAIRING);
      yields.add(
          name + "_64th_error",
          "What the nearest 1/64 in is too thick",
          Si.show(nearest - thick, Unit.INCH, Unit.INCH),
          "The nearest 1/64 in, less the thickness itself.");
    }
  }
}
