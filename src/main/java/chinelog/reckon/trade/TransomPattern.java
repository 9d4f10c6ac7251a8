package chinelog.reckon.trade;

import chinelog.drawn.LineUse;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.util.ArrayList;
import java.util.List;

/**
 * A flat transom that leans, laid flat: within the planking, each height above its foot goes 1 /
 * cos of the rake up the board, and its half-breadth is the hull's where the board is at that
 * height. The foot stands on the aftermost station; a positive rake leans aft. Exact for a hull
 * whose waterlines are straight there. Lengths in m.
 */
final class TransomPattern {

  static final Parameter RAKE =
      Parameter.quantity("transom_rake", "how far a flat transom leans aft from upright", Si.DEGREE)
          .or("no transom is drawn; 0 deg for an upright one");

  private static final double MOST = Math.toRadians(75);

  private TransomPattern() {}

  static Part draw(Offsets offsets, double thickness, double rake) throws TradeException {
    if (Math.abs(rake) > MOST) {
      throw new TradeException(
          "transom_rake", "A transom that leans so far is a deck.", "Give up to 75 deg.");
    }
    MouldSide side = MouldSide.of(offsets, 0, thickness);
    double foot = side.bottom();
    List<double[]> right = new ArrayList<>();
    if (side.outline().get(0)[0] > 0) {
      right.add(new double[] {0, 0});
    }
    for (double[] p : side.outline()) {
      double back = (p[1] - foot) * Math.tan(rake);
      double half = p[0] - back * Slant.along(offsets.stations(), 0, p[1]);
      if (half < 0) {
        throw new TradeException(
            "transom_rake",
            "Led on aft as it runs, the hull closes before a transom that leans so far.",
            "Give a smaller angle, or a station farther aft.");
      }
      right.add(new double[] {half, (p[1] - foot) / Math.cos(rake)});
    }
    double top = right.get(right.size() - 1)[1];
    right.add(new double[] {0, top});
    PartDrawing drawing = new PartDrawing("transom", Message.of("pattern.transom"));
    drawing.cut(MouldPattern.whole(right));
    drawing.line(LineUse.CENTRE, 0, 0, 0, top);
    List<Phrase> about =
        List.of(
            Message.of("pattern.transom"),
            Message.of("pattern.transom.about", Math.round(Math.toDegrees(rake)) + "°"));
    drawing.block(about, 0.003, top - 0.002);
    return drawing.part();
  }
}
