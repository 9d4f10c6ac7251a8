package chinelog.reckon.trade;

import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.Arrays;
import java.util.stream.DoubleStream;

/**
 * How the strips of a side are divided at each station: some keep their full width, the others
 * share what is left of the girth, and stop short where that would make them too narrow.
 */
final class StripTaper {

  /** The same, of girths that are taken from offsets. */
  private static final Message DOUBT = Message.of("planking.doubt", Message.of("form.girth.doubt"));

  private final Girths girths;
  private final double width;
  private final double least;
  private final long strips;
  private final long full;
  private final long[] run;
  private final double[] each;

  /**
   * @param width of a strip, in m
   * @param least to which it may taper, in m
   * @param strips of a side
   * @param full how many of them keep their full width
   */
  StripTaper(Girths girths, double width, double least, long strips, long full) {
    this.girths = girths;
    this.width = width;
    this.least = least;
    this.strips = strips;
    this.full = full;
    this.run = new long[girths.x().length];
    this.each = new double[run.length];
    for (int i = 0; i < run.length; i++) {
      double rest = girths.girth()[i] - full * width;
      long tapered = strips - full;
      double share = tapered == 0 ? width : Math.max(0, rest) / tapered;
      boolean narrow = tapered > 0 && share < least;
      run[i] = narrow ? floor(girths.girth()[i]) : strips;
      boolean tapers = tapered > 0 && run[i] > full;
      each[i] = tapers ? Math.min(width, rest / (run[i] - full)) : width;
    }
  }

  /** How many strips reach each station. */
  long[] run() {
    return run;
  }

  /** How wide those are at each station that taper, in m. */
  double[] each() {
    return each;
  }

  /** Adds how wide strips are at each station, and where they taper and stop short. */
  void add(YieldList yields) throws TradeException {
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
            girths.stations().isEmpty() ? Planking.PRACTICE : DOUBT);
      }
      yields.add(
          "reach_" + part,
          Message.of("planking.station.strips", girths.names().get(i)),
          Quantity.of(run[i], Unit.ONE),
          Message.of("planking.station.strips.how"),
          reaching(i),
          Planking.PRACTICE);
    }
    wedges(yields);
    narrowest(yields);
    shortStrips(yields);
  }

  /** How many strips the girth of a station holds, the figures put in. */
  private Message reaching(int station) throws TradeException {
    Quantity girth = girths.units().length(girths.girth()[station]);
    Quantity whole = girths.units().length(width);
    if (run[station] == strips) {
      return YieldList.worked("{0}", Si.number(strips));
    }
    return girths.girth()[station] < full * width
        ? YieldList.worked("⌊{0} ÷ {1}⌋", girth, whole)
        : YieldList.worked(
            "{0} + ⌊({1} − {0} × {2}) ÷ {3}⌋",
            Si.number(full), girth, whole, girths.units().length(least));
  }

  /** How long each strip is that stops short, and what all of them come to. */
  private void shortStrips(YieldList yields) throws TradeException {
    double[] x = girths.x();
    double whole = x[x.length - 1] - x[0];
    double sum = 0;
    Message method = Message.of("planking.strip.how");
    Terms shorts = new Terms("2 × (");
    long throughout = 0;
    for (long strip = 1; strip <= strips; strip++) {
      double needed = strip <= full ? strip * width : full * width + (strip - full) * least;
      double from = reach(needed, -1);
      double to = reach(needed, 1);
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
            Planking.PRACTICE);
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
        Planking.PRACTICE);
  }

  /** How far from the fullest station the girth stays at least so long, aft (-1) or forward (1). */
  private double reach(double needed, int way) {
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

  private void narrowest(YieldList yields) throws TradeException {
    int fullest = girths.fullest();
    taper(yields, "aft", Arrays.stream(each, 0, fullest + 1));
    taper(yields, "fore", Arrays.stream(each, fullest, each.length));
  }

  private void taper(YieldList yields, String end, DoubleStream widths) throws TradeException {
    double narrowest = widths.min().orElseThrow();
    yields.add(
        "taper_" + end,
        Message.of("planking.taper." + end),
        girths.units().length(width - narrowest),
        Message.of("planking.taper.how"),
        YieldList.worked(
            "{0} − {1}", girths.units().length(width), girths.units().length(narrowest)),
        Planking.PRACTICE);
  }

  private long floor(double girth) {
    double rest = girth - full * width;
    return rest < 0
        ? (long) Math.floor(girth / width + 1e-9)
        : full + (long) Math.floor(rest / least + 1e-9);
  }

  private void wedges(YieldList yields, String name, String title, long reaching)
      throws TradeException {
    yields.add(
        name,
        Message.of(title),
        Quantity.of(strips - reaching, Unit.ONE),
        Message.of("planking.short.how"),
        YieldList.worked("{0} − {1}", Si.number(strips), Si.number(reaching)),
        Planking.PRACTICE);
  }

  private void wedges(YieldList yields) throws TradeException {
    int fullest = girths.fullest();
    long aft = Arrays.stream(run, 0, fullest + 1).min().orElseThrow();
    long fore = Arrays.stream(run, fullest, run.length).min().orElseThrow();
    wedges(yields, "wedges_aft", "planking.short.aft", aft);
    wedges(yields, "wedges_fore", "planking.short.fore", fore);
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
        "planking.from",
        girths.units().length(girths.x()[first]),
        YieldList.worked("{0}", girths.units().length(girths.x()[first])),
        Planking.PRACTICE);
    yields.add(
        "all_to",
        "planking.to",
        girths.units().length(girths.x()[last]),
        YieldList.worked("{0}", girths.units().length(girths.x()[last])),
        Planking.PRACTICE);
  }
}
