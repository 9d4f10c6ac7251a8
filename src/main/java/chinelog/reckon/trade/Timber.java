package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;

/** What strips to buy or cut, and what becomes of them when they are faired. */
final class Timber {

  private static final Message FAIRING = Message.of("timber.fairing");

  private Timber() {}

  static void add(YieldList yields, Inputs inputs, Girths girths, long strips)
      throws TradeException, QuantityException {
    double wastage = Si.share(inputs, "wastage", 0.1);
    ShopUnits units = girths.units();
    double needed = 2 * strips * girths.run();
    double bought = needed / (1 - wastage);
    Terms chords = new Terms();
    for (double run : girths.runs()) {
      chords.add(units.length(run));
    }
    yields.add(
        "run",
        Message.of("timber.length"),
        units.length(girths.run()),
        Message.of(girths.stations().isEmpty() ? "timber.length.straight" : "timber.length.sheer"),
        chords.end());
    yields.add(
        "strip_length",
        Message.of("timber.buy"),
        units.run(bought),
        Message.of("timber.buy.how"),
        YieldList.worked(
            "2 × {0} × {1} ÷ {2}",
            Si.number(strips), units.length(girths.run()), Si.percent(1 - wastage)));
    boolean cut = inputs.findQuantity("sheet_width").isPresent();
    if (cut && inputs.findQuantity("stock_length").isEmpty()) {
      throw new TradeException(
          "sheet_width",
          "It is not said how long the strips are that a sheet gives.",
          "Give stock_length, the length of the sheet.");
    }
    if (inputs.findQuantity("stock_length").isPresent()) {
      double stock = Si.positive(inputs, "stock_length", Unit.METRE);
      long pieces = pieces(yields, units, 2 * strips, girths.run(), bought, stock);
      sheets(yields, inputs, pieces);
    }
    thickness(yields, inputs, girths);
  }

  /** How many to buy: no strip is joined where one in hand is as long as the run. */
  private static long pieces(
      YieldList yields, ShopUnits units, long strips, double run, double bought, double stock)
      throws TradeException {
    long joined = Planking.ceil(bought / stock);
    long each = (long) Math.floor(stock / run + 1e-9);
    long whole = each == 0 ? joined : Math.max(joined, Planking.ceil((double) strips / each));
    Message ofLength = YieldList.worked("⌈{0} ÷ {1}⌉", units.run(bought), units.length(stock));
    if (whole == joined) {
      yields.add(
          "pieces",
          Message.of("timber.strips"),
          Quantity.of(joined, Unit.ONE),
          Message.of(each == 0 ? "timber.strips.how" : "timber.strips.enough"),
          ofLength);
      return whole;
    }
    yields.add(
        "pieces",
        Message.of("timber.strips"),
        Quantity.of(whole, Unit.ONE),
        Message.of("timber.strips.whole", units.length(stock), Si.number(each)),
        YieldList.worked("⌈{0} ÷ {1}⌉", Si.number(strips), Si.number(each)));
    yields.add(
        "pieces_joined",
        Message.of("timber.joined"),
        Quantity.of(joined, Unit.ONE),
        Message.of("timber.strips.how"),
        ofLength);
    return whole;
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
        Message.of("timber.sheet"),
        Quantity.of(each, Unit.ONE),
        Message.of("timber.sheet.how"),
        YieldList.worked(
            "⌊({0} + {1}) ÷ ({2} + {1})⌋",
            Si.show(sheet, Unit.METRE, Unit.MILLIMETRE),
            Si.show(kerf, Unit.METRE, Unit.MILLIMETRE),
            Si.show(width, Unit.METRE, Unit.MILLIMETRE)));
    yields.add(
        "sheets",
        Message.of("timber.sheets"),
        Quantity.of(Planking.ceil((double) pieces / each), Unit.ONE),
        Message.of("timber.sheets.how"),
        YieldList.worked("⌈{0} ÷ {1}⌉", Si.number(pieces), Si.number(each)));
  }

  private static void thickness(YieldList yields, Inputs inputs, Girths girths)
      throws TradeException, QuantityException {
    if (inputs.findQuantity("strip_thickness").isEmpty()) {
      return;
    }
    Quantity given = inputs.quantity("strip_thickness");
    double thick = Si.positive(inputs, "strip_thickness", Unit.METRE);
    faired(yields, "faired_most", "quarter", given, 3.0 / 4);
    faired(yields, "faired_least", "third", given, 2.0 / 3);
    if (inputs.findQuantity("density").isPresent()) {
      double mass = girths.area() * thick * Si.positive(inputs, "density", Si.KG_M3);
      yields.add(
          "mass",
          Message.of("timber.before"),
          girths.units().mass(mass),
          Message.of("timber.before.how"),
          YieldList.worked(
              "{0} × {1} × {2}",
              girths.units().area(girths.area()),
              girths.units().length(thick),
              girths.units().density(mass / girths.area() / thick)));
      yields.add(
          "mass_faired_most",
          Message.of("timber.quarter"),
          girths.units().mass(mass * 3 / 4),
          YieldList.worked("{0} × ¾", girths.units().mass(mass)),
          FAIRING);
      yields.add(
          "mass_faired_least",
          Message.of("timber.third"),
          girths.units().mass(mass * 2 / 3),
          YieldList.worked("{0} × ⅔", girths.units().mass(mass)),
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
        Message.of("timber.thick." + share),
        Si.show(thick, given.unit(), given.unit()),
        YieldList.worked(
            "{0}{1}", given.withoutTolerance(), share.equals("quarter") ? " × ¾" : " × ⅔"),
        FAIRING);
    if (given.unit().equals(Unit.INCH)) {
      double nearest = Math.floor(thick * 64 + 0.5) / 64;
      yields.add(
          name + "_64th",
          Message.of("timber.nearest"),
          Si.show(nearest, Unit.INCH, Unit.INCH),
          Message.of("timber.nearest.how"),
          YieldList.worked(
              "⌊{0} + ½⌋ × {1}", Si.number(thick * 64), Si.show(1.0 / 64, Unit.INCH, Unit.INCH)),
          FAIRING);
      yields.add(
          name + "_64th_error",
          Message.of("timber.nearest.error"),
          Si.show(nearest - thick, Unit.INCH, Unit.INCH),
          Message.of("timber.nearest.error.how"),
          YieldList.worked(
              "{0} × {1} − {2}{3}",
              Si.number(Math.floor(thick * 64 + 0.5)),
              Si.show(1.0 / 64, Unit.INCH, Unit.INCH),
              given.withoutTolerance(),
              share.equals("quarter") ? " × ¾" : " × ⅔"));
    }
  }
}
