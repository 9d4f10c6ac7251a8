package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Planking with strips: how many, where they taper, what to buy, {@code planking}.
 *
 * <p>The fullest station sets the number of strips, n = ⌈girth / width⌉; elsewhere they share the
 * girth, and where a share falls below the least width, only ⌊girth / least width⌋ can run on and
 * the others stop as wedges. Common practice, no source; the arithmetic is exact.
 */
final class Planking {

  private static final Message PRACTICE = Message.of("planking.practice");

  /** The same, of girths that are taken from offsets. */
  private static final Message DOUBT = Message.of("planking.doubt", Message.of("form.girth.doubt"));

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
    Taper taper = Taper.of(girths, width, least, strips, full);
    return GaugeStrips.draw(girths, width, full, taper.run, taper.each);
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
    Taper taper = Taper.of(girths, width, least, strips, full);
    return List.of(
        new ShellExpansion(
                girths,
                width,
                (int) strips,
                full,
                taper.run,
                taper.each,
                strip -> (int) LiningOff.turn(inputs, strip, strips))
            .draw());
  }

  /**
   * How planks are divided at each station.
   *
   * @param run how many reach it
   * @param each width of those that taper
   */
  private record Taper(long[] run, double[] each) {

    static Taper of(Girths girths, double width, double least, long strips, long full) {
      long[] run = new long[girths.x().length];
      double[] each = new double[run.length];
      for (int i = 0; i < run.length; i++) {
        double rest = girths.girth()[i] - full * width;
        long tapered = strips - full;
        double share = tapered == 0 ? width : Math.max(0, rest) / tapered;
        boolean narrow = tapered > 0 && share < least;
        run[i] = narrow ? floor(girths.girth()[i], full, width, least) : strips;
        boolean tapers = tapered > 0 && run[i] > full;
        each[i] = tapers ? Math.min(width, rest / (run[i] - full)) : width;
      }
      return new Taper(run, each);
    }
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
        Message.of("planking.strips"),
        Quantity.of(strips, Unit.ONE),
        Message.of("planking.strips.how"),
        YieldList.worked(
            "⌈{0} ÷ {1}⌉", girths.units().length(girths.greatest()), girths.units().length(width)),
        PRACTICE);
    requireLaid(inputs, strips);
    long full = fullWidth(yields, inputs, girths, width, strips);
    taper(yields, girths, width, least, strips, full);
    shortStrips(yields, girths, width, least, strips, full);
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
        Message.of("planking.full"),
        Quantity.of(full, Unit.ONE),
        Message.of("planking.full.how"),
        YieldList.worked(
            "⌊({0} − {1}) ÷ {2}⌋",
            girths.units().length(fullest.girth()),
            girths.units().length(fullest.girth(draught)),
            girths.units().length(width)),
        PRACTICE);
    return full;
  }

  private static void taper(
      YieldList yields, Girths girths, double width, double least, long strips, long full)
      throws TradeException {
    Taper taper = Taper.of(girths, width, least, strips, full);
    long[] run = taper.run;
    double[] each = taper.each;
    for (int i = 0; i < run.length; i++) {
      String part = Offsets.factPart(girths.names().get(i));
      if (strips > full && run[i] > full) {
        yields.add(
            "width_" + part,
            Message.of("planking.station.width", girths.names().get(i)),
            Doubt.cut(
                each[i],
                each[i] == width ? 0 : girths.doubt(i) / (run[i] - full),
                girths.units()::length),
            Message.of("planking.station.width.how"),
            each[i] == width
                ? YieldList.worked("{0}", girths.units().length(width))
                : YieldList.worked(
                    "({0} − {1} × {2}) ÷ ({3} − {1})",
                    girths.units().length(girths.girth()[i]),
                    Si.number(full),
                    girths.units().length(width),
                    Si.number(run[i])),
            girths.stations().isEmpty() ? PRACTICE : DOUBT);
      }
      yields.add(
          "reach_" + part,
          Message.of("planking.station.strips", girths.names().get(i)),
          Quantity.of(run[i], Unit.ONE),
          Message.of("planking.station.strips.how"),
          reaching(girths, i, full, width, least, run[i] == strips ? strips : -1),
          PRACTICE);
    }
    wedges(yields, girths, strips, run);
    narrowest(yields, girths, width, each);
  }

  /**
   * How many strips a girth holds, the figures put in.
   *
   * @param all where all of them reach it; below 0 where some stop short
   */
  private static Message reaching(
      Girths girths, int station, long full, double width, double least, long all)
      throws TradeException {
    Quantity girth = girths.units().length(girths.girth()[station]);
    Quantity whole = girths.units().length(width);
    if (all >= 0) {
      return YieldList.worked("{0}", Si.number(all));
    }
    return girths.girth()[station] < full * width
        ? YieldList.worked("⌊{0} ÷ {1}⌋", girth, whole)
        : YieldList.worked(
            "{0} + ⌊({1} − {0} × {2}) ÷ {3}⌋",
            Si.number(full), girth, whole, girths.units().length(least));
  }

  /** How long each strip is that stops short, and what all of them come to. */
  private static void shortStrips(
      YieldList yields, Girths girths, double width, double least, long strips, long full)
      throws TradeException {
    double[] x = girths.x();
    double whole = x[x.length - 1] - x[0];
    double sum = 0;
    Message method = Message.of("planking.strip.how");
    Terms shorts = new Terms("2 × (");
    long throughout = 0;
    for (long strip = 1; strip <= strips; strip++) {
      double needed = strip <= full ? strip * width : full * width + (strip - full) * least;
      double from = reach(girths, needed, -1);
      double to = reach(girths, needed, 1);
      double length = girths.run() * (to - from) / whole;
      sum += length;
      if (to - from < whole - 1e-9) {
        yields.add(
            "strip_" + strip,
            Message.of("planking.strip", strip),
            girths.units().length(length),
            method,
            YieldList.worked(
                "{0} × ({1} − {2}) ÷ {3}",
                girths.units().length(girths.run()),
                girths.units().length(to),
                girths.units().length(from),
                girths.units().length(whole)),
            PRACTICE);
        shorts.add(girths.units().length(length));
      } else {
        throughout++;
      }
    }
    if (throughout > 0) {
      shorts.add(Si.number(throughout), " × ", girths.units().length(girths.run()));
    }
    yields.add(
        "strip_length_real",
        Message.of("planking.real"),
        girths.units().run(2 * sum),
        method,
        shorts.end(")"),
        PRACTICE);
  }

  /** How far from the fullest station the girth stays at least so long, aft (-1) or forward (1). */
  private static double reach(Girths girths, double needed, int way) {
    int i = girths.fullest();
    double[] x = girths.x();
    double[] g = girths.girth();
    while (i + way >= 0 && i + way < x.length && g[i + way] >= needed - 1e-9) {
      i += way;
    }
    if (i + way < 0 || i + way >= x.length) {
      return x[i];
    }
    double share = g[i] <= needed ? 0 : (g[i] - needed) / (g[i] - g[i + way]);
    return x[i] + share * (x[i + way] - x[i]);
  }

  private static void narrowest(YieldList yields, Girths girths, double width, double[] each)
      throws TradeException {
    int fullest = girths.fullest();
    taper(yields, girths, "aft", width, Arrays.stream(each, 0, fullest + 1));
    taper(yields, girths, "fore", width, Arrays.stream(each, fullest, each.length));
  }

  private static void taper(
      YieldList yields, Girths girths, String end, double width, DoubleStream widths)
      throws TradeException {
    double least = widths.min().orElseThrow();
    yields.add(
        "taper_" + end,
        Message.of("planking.taper." + end),
        girths.units().length(width - least),
        Message.of("planking.taper.how"),
        YieldList.worked("{0} − {1}", girths.units().length(width), girths.units().length(least)),
        PRACTICE);
  }

  private static long floor(double girth, long full, double width, double least) {
    double rest = girth - full * width;
    return rest < 0
        ? (long) Math.floor(girth / width + 1e-9)
        : full + (long) Math.floor(rest / least + 1e-9);
  }

  private static void wedges(YieldList yields, Girths girths, long strips, long[] run)
      throws TradeException {
    int fullest = girths.fullest();
    long aft = Arrays.stream(run, 0, fullest + 1).min().orElseThrow();
    long fore = Arrays.stream(run, fullest, run.length).min().orElseThrow();
    Message method = Message.of("planking.short.how");
    yields.add(
        "wedges_aft",
        Message.of("planking.short.aft"),
        Quantity.of(strips - aft, Unit.ONE),
        method,
        YieldList.worked("{0} − {1}", Si.number(strips), Si.number(aft)),
        PRACTICE);
    yields.add(
        "wedges_fore",
        Message.of("planking.short.fore"),
        Quantity.of(strips - fore, Unit.ONE),
        method,
        YieldList.worked("{0} − {1}", Si.number(strips), Si.number(fore)),
        PRACTICE);
    int last = fullest;
    while (last + 1 < run.length && run[last + 1] == strips) {
      last++;
    }
    int first = fullest;
    while (first > 0 && run[first - 1] == strips) {
      first--;
    }
    yields.add(
        "all_from",
        Message.of("planking.from"),
        girths.units().length(girths.x()[first]),
        Message.of("planking.from.how"),
        YieldList.worked("{0}", girths.units().length(girths.x()[first])),
        PRACTICE);
    yields.add(
        "all_to",
        Message.of("planking.to"),
        girths.units().length(girths.x()[last]),
        Message.of("planking.to.how"),
        YieldList.worked("{0}", girths.units().length(girths.x()[last])),
        PRACTICE);
  }

  static long ceil(double value) {
    return (long) Math.ceil(value - 1e-9);
  }
}
