package chinelog.reckon.trade;

import chinelog.drawn.LineUse;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.util.ArrayList;
import java.util.List;

/**
 * What planking is marked out with: for each station a strip as long as its girth, divided into the
 * planks that cross it, to be bent round the mould; and the shutter, the last plank, laid flat.
 */
final class GaugeStrips {

  private static final double HIGH = 0.012;

  private GaugeStrips() {}

  /**
   * @param run how many planks reach each station
   * @param each width of those that taper, at each station
   * @param full how many keep their width
   */
  static List<Part> draw(Girths girths, double width, long full, long[] run, double[] each)
      throws TradeException {
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < run.length; i++) {
      if (run[i] > 0 && girths.girth()[i] > 0.002) {
        parts.add(gauge(girths, i, width, Math.min(full, run[i]), run[i], each[i]));
      }
    }
    parts.addAll(shutter(girths, full, run, each));
    return parts;
  }

  private static Part gauge(Girths girths, int i, double width, long full, long run, double each)
      throws TradeException {
    String station = girths.names().get(i);
    double girth = girths.girth()[i];
    PartDrawing drawing =
        new PartDrawing("gauge_" + Offsets.factPart(station), Message.of("pattern.gauge", station));
    drawing.cut(
        List.of(
            new double[] {0, 0},
            new double[] {girth, 0},
            new double[] {girth, HIGH},
            new double[] {0, HIGH}));
    double at = 0;
    for (long k = 1; k < run; k++) {
      at += k <= full ? width : each;
      if (at > girth - 1e-6) {
        break;
      }
      drawing.line(LineUse.SCORE, at, 0, at, k % 5 == 0 ? HIGH : HIGH / 2);
    }
    drawing.write(
        Message.of(
            "pattern.gauge.about", station, (int) run, MouldPattern.amount(girths.units(), each)),
        girth + 0.003,
        HIGH / 2 - PartDrawing.SMALL / 2,
        PartDrawing.SMALL);
    return drawing.part();
  }

  /** Where every plank runs on, so does the shutter; beyond, it ends as the others do. */
  private static List<Part> shutter(Girths girths, long full, long[] run, double[] each)
      throws TradeException {
    int fullest = girths.fullest();
    int first = fullest;
    while (first > 0 && run[first - 1] == run[fullest]) {
      first--;
    }
    int last = fullest;
    while (last + 1 < run.length && run[last + 1] == run[fullest]) {
      last++;
    }
    if (first == last || run[fullest] <= full) {
      return List.of();
    }
    double[] along = new double[last - first + 1];
    double[] half = new double[along.length];
    for (int i = first; i <= last; i++) {
      half[i - first] = each[i] / 2;
      if (i > first) {
        along[i - first] = along[i - first - 1] + length(girths, i);
      }
    }
    PartDrawing drawing = new PartDrawing("shutter", Message.of("pattern.shutter"));
    List<double[]> edge =
        Batten.through(along, half).points().stream().map(p -> new double[] {p[0], p[1]}).toList();
    List<double[]> outline = new ArrayList<>();
    for (double[] p : edge) {
      outline.add(new double[] {p[0], -p[1]});
    }
    for (int k = edge.size() - 1; k >= 0; k--) {
      outline.add(edge.get(k));
    }
    drawing.cut(outline);
    drawing.line(LineUse.CENTRE, 0, 0, along[along.length - 1], 0);
    for (int k = 0; k < along.length; k++) {
      drawing.line(LineUse.SCORE, along[k], -half[k], along[k], half[k]);
      drawing.write(
          girths.names().get(first + k), along[k] + 0.001, half[k] + 0.002, PartDrawing.SMALL);
    }
    List<Phrase> about =
        List.of(Message.of("pattern.shutter"), Message.of("pattern.shutter.about"));
    drawing.block(about, 0, -half[0] - 0.003);
    return List.of(drawing.part());
  }

  /** Of the shutter from the station before to this one: between the middles of their girths. */
  private static double length(Girths girths, int i) {
    double level = girths.x()[i] - girths.x()[i - 1];
    if (girths.stations().isEmpty()) {
      return level;
    }
    double[] a = middle(girths.stations().get(i - 1));
    double[] b = middle(girths.stations().get(i));
    return Math.hypot(level, Math.hypot(b[0] - a[0], b[1] - a[1]));
  }

  private static double[] middle(HullSection station) {
    return station.divided(new double[] {0.5}, station.top())[0];
  }
}
