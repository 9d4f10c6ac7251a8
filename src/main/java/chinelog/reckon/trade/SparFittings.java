package chinelog.reckon.trade;

import chinelog.drawn.LineUse;
import chinelog.problem.Sentence;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a spar carries: a sleeve, whose development is wrapped round it, and a track for the slides
 * of a sail. Lengths in m, from the greatest diameter.
 *
 * <p>A sleeve round a taper is the frustum of a cone. Laid flat it lies between two arcs about the
 * cone's apex: with radii r and q of its ends and s along its side, R = r s / (r − q) and R − s,
 * over an angle of 2 π r / R; where r = q it is a rectangle of 2 π r.
 */
final class SparFittings {

  static final List<Parameter> PARAMETERS =
      List.of(
          Parameter.quantity("sleeve_at", "where a sleeve round it begins", Unit.METRE)
              .or("no sleeve"),
          Parameter.quantity("sleeve_length", "of the sleeve", Unit.METRE).or("no sleeve"),
          Parameter.quantity("track_from", "where a sail's track begins", Unit.METRE)
              .or("its greatest diameter"),
          Parameter.quantity("track_to", "where it ends", Unit.METRE).or("its end"),
          Parameter.quantity("track_width", "of the track", Unit.METRE).or("no track"));

  private static final double AS_A_CYLINDER = 1e-7;
  private static final int PIECES = 256;

  private final Inputs inputs;
  private final ShopUnits units;
  private final List<double[]> profile;
  private final double length;

  /**
   * @param profile points {@code {x, radius}} along the spar
   */
  SparFittings(Inputs inputs, List<double[]> profile) throws TradeException {
    this.inputs = inputs;
    this.units = ShopUnits.of(inputs.quantity("length").unit());
    this.profile = profile;
    this.length = profile.get(profile.size() - 1)[0];
  }

  private double radius(double x) {
    for (int i = 1; i < profile.size(); i++) {
      double[] a = profile.get(i - 1);
      double[] b = profile.get(i);
      if (x <= b[0] || i == profile.size() - 1) {
        double share = Math.max(0, Math.min(1, (x - a[0]) / (b[0] - a[0])));
        return a[1] + share * (b[1] - a[1]);
      }
    }
    throw new IllegalStateException("a spar of no length");
  }

  private boolean has(String input) {
    return inputs.findQuantity(input).isPresent();
  }

  /** Draws the track's edges and the sleeve's ends on the spar. */
  void draw(PartDrawing drawing) throws TradeException, QuantityException {
    if (has("track_width")) {
      track(drawing);
    }
    if (has("sleeve_at") || has("sleeve_length")) {
      double[] ends = sleeve();
      for (double x : ends) {
        double r = radius(x);
        drawing.line(LineUse.SCORE, x, -r, x, r);
      }
      drawing.write(
          Message.of("pattern.sleeve"),
          ends[0],
          -radius(ends[0]) - 0.003 - PartDrawing.SMALL,
          PartDrawing.SMALL);
    }
  }

  private void track(PartDrawing drawing) throws TradeException, QuantityException {
    double half = Si.positive(inputs, "track_width", Unit.METRE) / 2;
    double from = Si.value(inputs, "track_from", Unit.METRE, 0);
    double to = Si.value(inputs, "track_to", Unit.METRE, length);
    require("track_to", from, to);
    if (half > Math.min(radius(from), radius(to))) {
      throw new TradeException(
          "track_width",
          "The track is wider than the spar.",
          Sentence.of("Give less than {0}.", units.length(2 * Math.min(radius(from), radius(to)))));
    }
    drawing.line(LineUse.SCORE, from, -half, to, -half);
    drawing.line(LineUse.SCORE, from, half, to, half);
    drawing.line(LineUse.SCORE, from, -half, from, half);
    drawing.line(LineUse.SCORE, to, -half, to, half);
  }

  private void require(String input, double from, double to) throws TradeException {
    if (from < 0 || to > length + 1e-9 || to <= from) {
      throw new TradeException(
          input,
          Sentence.of(
              "It would reach from {0} to {1}, but the spar is {2} long.",
              units.length(from), units.length(to), units.length(length)),
          "Measure both from the greatest diameter, along the spar.");
    }
  }

  private double[] sleeve() throws TradeException, QuantityException {
    double at = Si.value(inputs, "sleeve_at", Unit.METRE);
    double to = at + Si.positive(inputs, "sleeve_length", Unit.METRE);
    require("sleeve_length", at, to);
    return new double[] {at, to};
  }

  /** The sleeve's development; its thicker end to the left, its seam above and below. */
  Optional<Part> development() throws TradeException, QuantityException {
    if (!has("sleeve_at") && !has("sleeve_length")) {
      return Optional.empty();
    }
    double[] ends = sleeve();
    double thick = radius(ends[0]);
    double thin = radius(ends[1]);
    double side = Math.hypot(ends[1] - ends[0], thick - thin);
    PartDrawing drawing = new PartDrawing("sleeve", Message.of("pattern.sleeve"));
    double around = Math.PI * thick;
    if (thick - thin < AS_A_CYLINDER) {
      drawing.cut(
          List.of(
              new double[] {0, -around},
              new double[] {side, -around},
              new double[] {side, around},
              new double[] {0, around}));
    } else {
      double outer = thick * side / (thick - thin);
      double half = around / outer;
      List<double[]> outline = new ArrayList<>(arc(outer, outer, half));
      List<double[]> inner = arc(outer, outer - side, half);
      java.util.Collections.reverse(inner);
      outline.addAll(inner);
      drawing.cut(outline);
    }
    drawing.line(LineUse.CENTRE, 0, 0, side, 0);
    drawing.block(
        List.of(
            Message.of(
                "pattern.sleeve.about",
                MouldPattern.amount(units, 2 * thick),
                MouldPattern.amount(units, 2 * thin))),
        0,
        -around - 0.001);
    return Optional.of(drawing.part());
  }

  private static List<double[]> arc(double apex, double radius, double half) {
    List<double[]> points = new ArrayList<>();
    for (int i = 0; i <= PIECES; i++) {
      double angle = -half + 2 * half * i / PIECES;
      points.add(new double[] {apex - radius * Math.cos(angle), radius * Math.sin(angle)});
    }
    return points;
  }
}
