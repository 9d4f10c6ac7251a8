package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.List;

/**
 * Planking with strips: how many, where they taper, what to buy, {@code planking}.
 *
 * <p>The fullest station sets the number of strips, n = ⌈girth / width⌉; elsewhere they share the
 * girth, and where a share falls below the least width, only ⌊girth / least width⌋ can run on and
 * the others stop as wedges. Common practice, no source; the arithmetic is exact.
 */
final class Planking {

  static final Message PRACTICE = Message.of("planking.practice");

  /** More strips than this could not be told apart in a drawing. */
  private static final int MOST_DRAWN = 200;

  static final TradeReckoning RECKONING =
      new TradeReckoning("planking", "Planking with strips", parameters(), Planking::of)
          .yielding(LiningOff.YIELDS)
          .yielding(
              "strips",
              "planking.strips",
              "full_strips",
              "planking.full",
              "width_…",
              "planking.station.width",
              "reach_…",
              "planking.station.strips",
              "taper_aft",
              "planking.taper.aft",
              "taper_fore",
              "planking.taper.fore",
              "wedges_aft",
              "planking.short.aft",
              "wedges_fore",
              "planking.short.fore",
              "all_from",
              "planking.from",
              "all_to",
              "planking.to",
              "strip_…",
              "planking.strip",
              "strip_length_real",
              "planking.real",
              "run",
              "timber.length",
              "strip_length",
              "timber.buy",
              "pieces",
              "timber.strips",
              "pieces_joined",
              "timber.joined",
              "strips_per_sheet",
              "timber.sheet",
              "sheets",
              "timber.sheets",
              "faired_most",
              "timber.thick.quarter",
              "faired_most_64th",
              "timber.nearest",
              "faired_most_64th_error",
              "timber.nearest.error",
              "faired_least",
              "timber.thick.third",
              "faired_least_64th",
              "timber.nearest",
              "faired_least_64th_error",
              "timber.nearest.error",
              "mass",
              "timber.before",
              "mass_faired_most",
              "timber.quarter",
              "mass_faired_least",
              "timber.third")
          .drawing(Planking::draw)
          .sketching(Planking::sketch);

  private Planking() {}

  private static List<Parameter> parameters() {
    List<Parameter> all = new ArrayList<>();
    all.addAll(
        List.of(
            Offsets.TABLE.or("the girths"),
            Offsets.SIDING,
            Offsets.MANNER.get(0),
            Offsets.MANNER.get(1),
            Parameter.table("girths", "in place of offsets, of one side", "station?", "x", "girth")
                .or("those of the offsets"),
            Parameter.quantity("strip_width", "that a strip covers", Unit.METRE),
            Parameter.quantity("strip_thickness", "as bought", Unit.METRE).or(""),
            Parameter.quantity("least_width", "to which a strip may be tapered", Unit.METRE)
                .or("half the strip's width"),
            Parameter.quantity("draught", "where full-width strips end amidships", Unit.METRE)
                .or("every strip shares in the taper"),
            Parameter.quantity("wastage", "share of what is bought that is cut away", Unit.ONE)
                .or("10 %")
                .recalling(),
            Parameter.quantity("stock_length", "of a strip as bought or cut", Unit.METRE)
                .or("strips are long enough"),
            Parameter.quantity("sheet_width", "of a sheet to cut strips from", Unit.METRE).or(""),
            Parameter.quantity("kerf", "of the saw; a knife has none", Unit.METRE).or("0"),
            Parameter.quantity("density", "of the wood, to tell the mass", Si.KG_M3).or(""),
            Parameter.quantity(
                    "laid", "strips laid on a side so far, to be drawn as done", Unit.ONE)
                .or("")));
    all.addAll(LiningOff.PARAMETERS);
    return all;
  }

  private static List<Part> draw(Inputs inputs) throws TradeException, QuantityException {
    Girths girths = Girths.of(inputs);
    double width = Si.positive(inputs, "strip_width", Unit.METRE);
    double least = Si.positive(inputs, "least_width", Unit.METRE, width / 2);
    long strips = ceil(girths.greatest() / width);
    long full = fullWidth(new YieldList(), inputs, girths, width, strips);
    StripTaper taper = new StripTaper(girths, width, least, strips, full);
    return GaugeStrips.draw(girths, width, full, taper.run(), taper.each());
  }

  private static List<Sketch> sketch(Inputs inputs) throws TradeException, QuantityException {
    Girths girths = Girths.of(inputs);
    double width = Si.positive(inputs, "strip_width", Unit.METRE);
    double least = Si.positive(inputs, "least_width", Unit.METRE, width / 2);
    long strips = ceil(girths.greatest() / width);
    if (strips > MOST_DRAWN) {
      return List.of();
    }
    long full = fullWidth(new YieldList(), inputs, girths, width, strips);
    StripTaper taper = new StripTaper(girths, width, least, strips, full);
    return List.of(
        new ShellExpansion(
                girths,
                width,
                (int) strips,
                full,
                taper.run(),
                taper.each(),
                strip -> (int) LiningOff.turn(inputs, strip, strips))
            .draw());
  }

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    Girths girths = Girths.of(inputs);
    double width = Si.positive(inputs, "strip_width", Unit.METRE);
    double least = Si.positive(inputs, "least_width", Unit.METRE, width / 2);
    if (least > width) {
      throw new TradeException(
          "least_width", "The least width is more than the strip's.", "Give a smaller one.");
    }
    if (width > girths.greatest()) {
      throw new TradeException(
          "strip_width",
          "One strip is wider than the greatest girth.",
          "Look at the unit of the strip's width, or take narrower strips.");
    }
    long strips = ceil(girths.greatest() / width);
    YieldList yields = new YieldList();
    yields.add(
        "strips",
        "planking.strips",
        Quantity.of(strips, Unit.ONE),
        YieldList.worked(
            "⌈{0} ÷ {1}⌉", girths.units().length(girths.greatest()), girths.units().length(width)),
        PRACTICE);
    requireLaid(inputs, strips);
    long full = fullWidth(yields, inputs, girths, width, strips);
    new StripTaper(girths, width, least, strips, full).add(yields);
    yields.from();
    LiningOff.add(yields, inputs, girths, strips);
    Timber.add(yields, inputs, girths, strips);
    return yields.list();
  }

  private static void requireLaid(Inputs inputs, long strips)
      throws TradeException, QuantityException {
    double laid = Si.value(inputs, "laid", Unit.ONE, 0);
    if (laid < 0 || laid > strips) {
      throw new TradeException(
          "laid",
          Sentence.of("There are {0} strips on a side.", strips),
          "Give how many of them are laid, of one side alone.");
    }
  }

  /** How many strips a side keep their full width from end to end. */
  private static long fullWidth(
      YieldList yields, Inputs inputs, Girths girths, double width, long strips)
      throws TradeException, QuantityException {
    if (inputs.findQuantity("draught").isEmpty()) {
      return 0;
    }
    if (girths.stations().isEmpty()) {
      throw new TradeException(
          "draught", "A table of girths does not tell where the water lies.", "Give offsets.");
    }
    double draught = Si.value(inputs, "draught", Unit.METRE);
    HullSection fullest = girths.stations().get(girths.fullest());
    if (draught <= fullest.keel() || draught >= fullest.top()) {
      throw new TradeException(
          "draught",
          Sentence.of("The waterline does not cross station {0}.", fullest.name()),
          "Give a height between its keel and its sheer.");
    }
    double above = fullest.girth() - fullest.girth(draught);
    long full = Math.min(strips, (long) Math.floor(above / width + 1e-9));
    yields.add(
        "full_strips",
        "planking.full",
        Quantity.of(full, Unit.ONE),
        YieldList.worked(
            "⌊({0} − {1}) ÷ {2}⌋",
            girths.units().length(fullest.girth()),
            girths.units().length(fullest.girth(draught)),
            girths.units().length(width)),
        PRACTICE);
    return full;
  }

  static long ceil(double value) {
    return (long) Math.ceil(value - 1e-9);
  }
}
