package chinelog.reckon.trade;

import chinelog.drawn.LineUse;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.List;

/**
 * A fin or rudder from the side, with a template of its section at root and tip; and a bulb in
 * profile, by which either half is carved. The sections are those of {@link FoilSection}. Lengths
 * in m, the nose to the left.
 */
final class FoilPattern {

  private static final int STEPS = 60;

  private FoilPattern() {}

  static List<Part> fin(double root, double tip, double span, double rake, double thickness) {
    PartDrawing side = new PartDrawing("side", Message.of("pattern.fin"));
    side.cut(
        List.of(
            new double[] {0, 0},
            new double[] {root, 0},
            new double[] {rake + tip, -span},
            new double[] {rake, -span}));
    // Thickest at three tenths of the chord, all the way down.
    side.line(LineUse.SCORE, 0.3 * root, 0, rake + 0.3 * tip, -span);
    side.block(
        List.of(Message.of("pattern.fin"), Message.of("pattern.fin.about")), 0, -span - 0.001);
    List<Part> parts = new ArrayList<>(List.of(side.part()));
    parts.add(section("root", Message.of("pattern.fin.root"), root, thickness));
    if (tip != root) {
      parts.add(section("tip", Message.of("pattern.fin.tip"), tip, thickness));
    }
    return parts;
  }

  static Part bulb(double length, double diameter, int[] percents) {
    PartDrawing drawing = drawing("bulb", Message.of("pattern.bulb"), length, diameter / length);
    for (int percent : percents) {
      double half = diameter * FoilSection.half(percent / 100.0);
      if (half > 0) {
        double x = length * percent / 100;
        drawing.line(LineUse.SCORE, x, -half, x, half);
      }
    }
    return drawing.part();
  }

  private static Part section(String name, Message title, double chord, double thickness) {
    return drawing(name, title, chord, thickness).part();
  }

  private static PartDrawing drawing(String name, Message title, double chord, double thickness) {
    List<double[]> upper = new ArrayList<>();
    for (int i = 0; i <= STEPS; i++) {
      double share = (double) i * i / (STEPS * STEPS);
      upper.add(new double[] {share * chord, thickness * chord * FoilSection.half(share)});
    }
    List<double[]> outline = new ArrayList<>(upper);
    for (int i = STEPS; i > 0; i--) {
      outline.add(new double[] {upper.get(i)[0], -upper.get(i)[1]});
    }
    PartDrawing drawing = new PartDrawing(name, title);
    drawing.cut(outline);
    drawing.line(LineUse.CENTRE, 0, 0, chord, 0);
    drawing.block(List.of(title), 0, -thickness * chord / 2 - 0.001);
    return drawing;
  }
}
