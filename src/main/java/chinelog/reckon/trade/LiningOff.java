package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.List;

/**
 * What is marked on moulds and planks before planking: battens that stand in for the planks' edges,
 * the turn in which strips are laid, and the gains of planks that lap.
 *
 * <p>At each station battens share the girth equally, none further apart than asked. Planks laid
 * from both edges meet in the shutter. A lap is planed away towards the ends, half of it off each
 * plank, so that the planks lie flush there: over the length of the gain its depth grows evenly to
 * half of the thickness. Common practice of planking, no source; the arithmetic is exact.
 */
final class LiningOff {

  private static final Message PRACTICE = Message.of("planking.practice");

  /** A gain's usual length in thicknesses of the plank. */
  private static final double GAIN = 12;

  static final List<Parameter> PARAMETERS =
      List.of(
          Parameter.word(
                  "order",
                  "how strips are laid: from the sheer down, or from sheer and keel by turns until"
                      + " they meet",
                  "sheer",
                  "both")
              .or("sheer"),
          Parameter.quantity("batten_spacing", "most between battens for lining off", Unit.METRE)
              .or("no battens"),
          Parameter.quantity("lap", "of each plank over the next", Unit.METRE)
              .or("planks lie edge to edge"),
          Parameter.quantity("gain_length", "over which a lap is planed away", Unit.METRE)
              .or("12 thicknesses of the plank"));

  static final String[] YIELDS = {
    "laid_…", "planking.laid",
    "shutter", "planking.shutter",
    "battens", "planking.battens",
    "batten_length", "planking.batten.length",
    "batten_mark_…", "planking.batten.mark",
    "plank_width", "planking.plank",
    "gain_length", "planking.gain.length",
    "gain_depth", "planking.gain.depth",
    "gain_depth_…", "planking.gain.at"
  };

  private LiningOff() {}

  static void add(YieldList yields, Inputs inputs, Girths girths, long strips)
      throws TradeException, QuantityException {
    order(yields, inputs, strips);
    battens(yields, inputs, girths);
    gains(yields, inputs, girths.units());
  }

  /** Which strip is laid when, counted from the sheer. */
  private static void order(YieldList yields, Inputs inputs, long strips) throws TradeException {
    boolean both = isFromBoth(inputs);
    long shutter = both ? strips / 2 + 1 : strips;
    yields.add(
        "shutter",
        Message.of("planking.shutter"),
        Quantity.of(shutter, Unit.ONE),
        Message.of(both ? "planking.order.both" : "planking.order.sheer"),
        both
            ? YieldList.worked("⌊{0} ÷ 2⌋ + 1", Si.number(strips))
            : YieldList.worked("{0}", Si.number(strips)),
        PRACTICE);
    for (long strip = 1; both && strip <= strips; strip++) {
      boolean fromSheer = isFromSheer(strip, strips);
      yields.add(
          "laid_" + strip,
          Message.of("planking.laid", strip),
          Quantity.of(turn(inputs, strip, strips), Unit.ONE),
          Message.of("planking.order.both"),
          fromSheer
              ? YieldList.worked("2 × {0} − 1", Si.number(strip))
              : YieldList.worked("2 × ({0} − {1} + 1)", Si.number(strips), Si.number(strip)),
          PRACTICE);
    }
  }

  private static boolean isFromBoth(Inputs inputs) {
    return inputs.word("order", "sheer").equals("both");
  }

  private static boolean isFromSheer(long strip, long strips) {
    return 2 * strip - 1 <= strips;
  }

  /** The turn in which a strip is laid. */
  static long turn(Inputs inputs, long strip, long strips) {
    if (!isFromBoth(inputs)) {
      return strip;
    }
    return isFromSheer(strip, strips) ? 2 * strip - 1 : 2 * (strips - strip + 1);
  }

  private static void battens(YieldList yields, Inputs inputs, Girths girths)
      throws TradeException, QuantityException {
    if (inputs.findQuantity("batten_spacing").isEmpty()) {
      return;
    }
    double spacing = Si.positive(inputs, "batten_spacing", Unit.METRE);
    ShopUnits units = girths.units();
    long spaces = Planking.ceil(girths.greatest() / spacing);
    long battens = spaces - 1;
    if (battens < 1) {
      throw new TradeException(
          "batten_spacing",
          "One space would be as wide as the whole girth.",
          "Give less, such as the width of four planks.");
    }
    yields.add(
        "battens",
        Message.of("planking.battens"),
        Quantity.of(battens, Unit.ONE),
        Message.of("planking.battens.how"),
        YieldList.worked("⌈{0} ÷ {1}⌉ − 1", units.length(girths.greatest()), units.length(spacing)),
        PRACTICE);
    yields.add(
        "batten_length",
        Message.of("planking.batten.length"),
        units.run(2 * battens * girths.run()),
        Message.of("planking.batten.length.how"),
        YieldList.worked("2 × {0} × {1}", Si.number(battens), units.length(girths.run())),
        PRACTICE);
    for (int i = 0; i < girths.names().size(); i++) {
      String name = girths.names().get(i);
      yields.add(
          "batten_mark_" + Offsets.factPart(name),
          Message.of("planking.batten.mark", name),
          units.length(girths.girth()[i] / spaces),
          Message.of("planking.batten.mark.how"),
          YieldList.worked("{0} ÷ {1}", units.length(girths.girth()[i]), Si.number(spaces)),
          PRACTICE);
    }
  }

  private static void gains(YieldList yields, Inputs inputs, ShopUnits units)
      throws TradeException, QuantityException {
    if (inputs.findQuantity("lap").isEmpty()) {
      return;
    }
    double lap = Si.positive(inputs, "lap", Unit.METRE);
    double cover = Si.positive(inputs, "strip_width", Unit.METRE);
    double thick = Si.positive(inputs, "strip_thickness", Unit.METRE);
    if (lap >= cover) {
      throw new TradeException(
          "lap", "The lap is as wide as what a plank covers.", "Give a narrower lap.");
    }
    double length = Si.positive(inputs, "gain_length", Unit.METRE, GAIN * thick);
    Message how = Message.of("planking.gain.how");
    yields.add(
        "plank_width",
        Message.of("planking.plank"),
        units.length(cover + lap),
        Message.of("planking.plank.how"),
        YieldList.worked("{0} + {1}", units.length(cover), units.length(lap)),
        PRACTICE);
    yields.add(
        "gain_length",
        Message.of("planking.gain.length"),
        units.length(length),
        how,
        inputs.findQuantity("gain_length").isPresent()
            ? YieldList.worked("{0}", units.length(length))
            : YieldList.worked("{0} × {1}", Si.number(GAIN), units.length(thick)),
        PRACTICE);
    yields.add(
        "gain_depth",
        Message.of("planking.gain.depth"),
        units.length(thick / 2),
        how,
        YieldList.worked("{0} ÷ 2", units.length(thick)),
        PRACTICE);
    for (int quarter = 1; quarter <= 3; quarter++) {
      yields.add(
          "gain_depth_" + 25 * quarter,
          Message.of("planking.gain.at", units.length(length * quarter / 4)),
          units.length(thick / 2 * quarter / 4),
          how,
          YieldList.worked(
              "{0} ÷ 2 × {1} ÷ {2}", units.length(thick), Si.number(quarter), Si.number(4)),
          PRACTICE);
    }
  }
}
