package chinelog.reckon.trade;

import chinelog.drawn.Anchor;
import chinelog.drawn.Ink;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntUnaryOperator;

/**
 * The shell expansion of one side: its girths laid off straight above the keel, and on it the
 * strips, counted from the sheer down. Girths are drawn larger than lengths, so that each strip can
 * be told from the next.
 */
final class ShellExpansion {

  private static final double LEFT = 24;
  private static final double RIGHT = Sketch.WIDTH - 6;
  private static final double HIGHEST = 210;
  private static final double HIGH_STRIP = 8;
  private static final int EVERY = 5;
  private static final int PIECES = 4;

  private final Girths girths;
  private final double width;
  private final int strips;
  private final long full;
  private final long[] run;
  private final double[] each;
  private final IntUnaryOperator turn;
  private final double scale;
  private final double up;
  private final SketchPad pad = new SketchPad();

  /**
   * @param full how many strips keep their width
   * @param run how many reach each station
   * @param each width of those that taper, at each station
   * @param turn in which a strip is laid
   */
  ShellExpansion(
      Girths girths,
      double width,
      int strips,
      long full,
      long[] run,
      double[] each,
      IntUnaryOperator turn) {
    this.girths = girths;
    this.width = width;
    this.strips = strips;
    this.full = full;
    this.run = run;
    this.each = each;
    this.turn = turn;
    double[] x = girths.x();
    this.scale = (RIGHT - LEFT) / (x[x.length - 1] - x[0]);
    this.up = Math.min(HIGHEST, Math.max(60, strips * HIGH_STRIP)) / girths.greatest();
  }

  Sketch draw() throws TradeException {
    for (int strip = 1; strip <= strips; strip++) {
      List<double[]> above = edge(strip - 1);
      List<double[]> below = edge(strip);
      pad.strip(turn.applyAsInt(strip), Profile.around(above, below));
    }
    pad.curve(Ink.HULL, edge(0));
    pad.curve(Ink.HULL, edge(strips));
    double y = stations();
    numbers();
    table();
    double larger = up / scale;
    pad.aside(
        Message.of("sketch.planking.scale", Si.number(Math.round(larger * 10) / 10.0)),
        RIGHT,
        y - SketchPad.LINE - 2,
        Anchor.END);
    return pad.sketch(
        "planking",
        Message.of("sketch.planking"),
        Message.of("sketch.planking.about", strips),
        y - SketchPad.LINE - 8,
        girths.greatest() * up + 4);
  }

  /** The lower edge of a strip, fair through its stations; that of 0 is the sheer. */
  private List<double[]> edge(int strip) {
    double[] x = new double[run.length];
    double[] y = new double[run.length];
    for (int i = 0; i < run.length; i++) {
      x[i] = x(i);
      y[i] = (girths.girth()[i] - below(strip, i)) * up;
    }
    FairCurve fair = FairCurve.of(FairCurve.Shape.MONOTONE, x, y);
    List<double[]> edge = new ArrayList<>();
    for (int i = 1; i < x.length; i++) {
      for (int k = i == 1 ? 0 : 1; k <= PIECES; k++) {
        double at = x[i - 1] + (x[i] - x[i - 1]) * k / PIECES;
        edge.add(new double[] {at, fair.at(at)});
      }
    }
    return edge;
  }

  private double below(int strip, int station) {
    double girth = girths.girth()[station];
    if (strip >= run[station]) {
      return strip == 0 ? 0 : girth;
    }
    double down = strip <= full ? strip * width : full * width + (strip - full) * each[station];
    return Math.min(girth, down);
  }

  private double x(int station) {
    return LEFT + (girths.x()[station] - girths.x()[0]) * scale;
  }

  /** Stations and their names beneath the keel. */
  private double stations() {
    double free = -1;
    for (int i = 0; i < run.length; i++) {
      pad.line(Ink.FINE, x(i), -4, x(i), 0);
      String name = girths.names().get(i);
      double wide = 7.5 * name.length();
      double at = Math.min(Sketch.WIDTH - wide / 2, x(i));
      if (at - wide / 2 >= free) {
        pad.aside(Phrase.own(name), at, -17, Anchor.MIDDLE);
        free = at + wide / 2 + 5;
      }
    }
    return -17;
  }

  /** Every fifth strip's number before its after end. */
  private void numbers() {
    int fullest = girths.fullest();
    double free = Double.POSITIVE_INFINITY;
    for (int strip = 1; strip <= strips; strip++) {
      boolean due = strip == 1 || strip % EVERY == 0 || strip == strips;
      int from = 0;
      while (from < fullest && run[from] < strip) {
        from++;
      }
      double middle =
          (girths.girth()[from] - (below(strip - 1, from) + below(strip, from)) / 2) * up;
      if (due && free - middle >= SketchPad.LINE * 0.8) {
        pad.write(String.valueOf(strip), x(from) - 4, middle - 4.5, Anchor.END);
        free = middle;
      }
    }
  }

  private void table() throws TradeException {
    pad.head(
        Message.of("sketch.station"),
        Message.of("sketch.from.aft"),
        Message.of("sketch.girth"),
        Message.of("sketch.strips"),
        Message.of("sketch.strip.width"));
    for (int i = 0; i < run.length; i++) {
      pad.row(
          girths.names().get(i),
          told(girths.x()[i]),
          told(girths.girth()[i]),
          Quantity.of(run[i], Unit.ONE),
          run[i] > full ? told(each[i]) : "");
    }
  }

  private Quantity told(double metres) throws TradeException {
    return girths.units().length(SketchPad.asTold(metres));
  }
}
