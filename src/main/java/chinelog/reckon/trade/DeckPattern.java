package chinelog.reckon.trade;

import chinelog.drawn.LineUse;
import chinelog.problem.Sentence;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.util.ArrayList;
import java.util.List;

/**
 * The deck laid flat, within the planking: across, each half is as long as the arc of its camber,
 * which has one radius from end to end, R = (b² + c²) / 2c for a camber c at the greatest
 * half-breadth b. The sheer's own curve along the hull is not laid flat. Common practice, no
 * source; the arc is exact. Lengths in m.
 */
final class DeckPattern {

  static final Parameter CAMBER =
      Parameter.quantity(
              "camber",
              "how much higher than its edge the middle of the deck lies where it is widest",
              Unit.METRE)
          .or("no deck is drawn; 0 for a flat one");

  private DeckPattern() {}

  static Part draw(Offsets offsets, double thickness, double camber) throws TradeException {
    List<HullSection> stations = offsets.stations();
    double[] x = offsets.stationX();
    double[] half = new double[x.length];
    double widest = 0;
    for (int i = 0; i < x.length; i++) {
      MouldSide side = MouldSide.of(offsets, i, thickness);
      half[i] = side.outline().get(side.outline().size() - 1)[0];
      widest = Math.max(widest, half[i]);
    }
    if (camber >= widest) {
      throw new TradeException(
          "camber",
          Sentence.of(
              "The camber is more than half the beam, {0}.", offsets.units().length(widest)),
          "Give how much higher the middle of the deck lies than its edge.");
    }
    for (int i = 0; i < x.length; i++) {
      half[i] = arc(half[i], widest, camber);
    }
    PartDrawing drawing = new PartDrawing("deck", Message.of("pattern.deck"));
    List<double[]> outline = new ArrayList<>();
    for (double[] p : Batten.through(x, half).points()) {
      outline.add(new double[] {p[0], -p[1]});
    }
    for (int i = outline.size() - 1; i >= 0; i--) {
      outline.add(new double[] {outline.get(i)[0], -outline.get(i)[1]});
    }
    drawing.cut(outline);
    drawing.line(LineUse.CENTRE, x[0], 0, x[x.length - 1], 0);
    for (int i = 0; i < x.length; i++) {
      drawing.line(LineUse.SCORE, x[i], -half[i], x[i], half[i]);
      drawing.write(stations.get(i).name(), x[i] + 0.001, 0.001, PartDrawing.SMALL);
    }
    List<Phrase> about = List.of(Message.of("pattern.deck"), Message.of("pattern.deck.about"));
    drawing.block(about, x[0] + 0.004, -0.003);
    return drawing.part();
  }

  private static double arc(double half, double widest, double camber) {
    if (camber == 0) {
      return half;
    }
    double radius = (widest * widest + camber * camber) / (2 * camber);
    return radius * Math.asin(half / radius);
  }
}
