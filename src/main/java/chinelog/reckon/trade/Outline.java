package chinelog.reckon.trade;

import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * One side of a station: fair curves from corner to corner, such as from keel to chine and from
 * chine to sheer. A piece with nothing given between its ends is straight. Lengths in m.
 */
final class Outline {

  private final List<Piece> pieces;

  /**
   * A curve of the half-breadths over the heights.
   *
   * @param rival what it gives way to, by its own weight; null where it gives way to none
   */
  private record Piece(FairCurve curve, FairCurve.@Nullable Rival rival) {

    double of(ToDoubleFunction<FairCurve> figure) {
      double own = figure.applyAsDouble(curve);
      return rival == null
          ? own
          : own + rival.weight() * (figure.applyAsDouble(rival.curve()) - own);
    }
  }

  private Outline(List<Piece> pieces) {
    this.pieces = pieces;
  }

  /**
   * @param z heights, rising, at least two
   * @param y half-breadths at those heights
   * @param corners numbers of the heights, between the first and the last, at which it turns
   */
  static Outline through(double[] z, double[] y, int[] corners) {
    List<Piece> pieces = new ArrayList<>();
    int from = 0;
    for (int corner : corners) {
      pieces.add(piece(z, y, from, corner));
      from = corner;
    }
    pieces.add(piece(z, y, from, z.length - 1));
    return new Outline(pieces);
  }

  private static Piece piece(double[] z, double[] y, int from, int to) {
    double[] heights = Arrays.copyOfRange(z, from, to + 1);
    double[] halves = Arrays.copyOfRange(y, from, to + 1);
    return new Piece(
        from == 0 ? FairCurve.upAStation(heights, halves) : FairCurve.aboveACorner(heights, halves),
        null);
  }

  double at(double height) {
    Piece piece = pieces.get(0);
    for (Piece next : pieces) {
      piece = next.curve.start() <= height ? next : piece;
    }
    return piece.of(curve -> curve.at(height));
  }

  /** The integral of what is linear in the half-breadth, {@code f(z, y)}. */
  double integral(double from, double to, DoubleBinaryOperator f) {
    double sum = 0;
    for (Piece piece : pieces) {
      if (piece.curve.start() < to) {
        sum += piece.of(curve -> curve.integral(from, to, f));
      }
    }
    return sum;
  }

  /** As {@link FairCurve#hasMultipliers}. */
  boolean hasMultipliers() {
    return pieces.stream().allMatch(piece -> piece.curve.hasMultipliers());
  }

  /** As {@link FairCurve#multipliers(double, double, DoubleUnaryOperator)}. */
  double[] multipliers(double from, double to, DoubleUnaryOperator weight) {
    double[] all = {0};
    for (Piece piece : pieces) {
      double[] own =
          piece.curve.start() < to
              ? piece.curve.multipliers(from, to, weight)
              : new double[piece.curve.size()];
      int shared = all.length - 1;
      all = Arrays.copyOf(all, shared + own.length);
      for (int i = 0; i < own.length; i++) {
        all[shared + i] += own[i];
      }
    }
    return all;
  }

  /** As {@link FairCurve#pieces(double, double, DoubleBinaryOperator)}. */
  double[] pieces(double from, double to, DoubleBinaryOperator f) {
    return pieces.stream()
        .filter(piece -> piece.curve.start() < to)
        .flatMapToDouble(piece -> Arrays.stream(piece.curve.pieces(from, to, f)))
        .toArray();
  }

  Message said() {
    return pieces.size() == 1
        ? pieces.get(0).curve.shape().said()
        : Message.of("shape.cornered", pieces.get(0).curve.shape().said());
  }

  /**
   * This outline on the way to curves of another shape through the same half-breadths: as far as
   * each tells of how far its piece may be out.
   */
  Map<FairCurve.Shape, Outline> rivals() {
    List<Map<FairCurve.Shape, FairCurve.Rival>> all = new ArrayList<>();
    for (int i = 0; i < pieces.size(); i++) {
      FairCurve curve = pieces.get(i).curve;
      Map<FairCurve.Shape, FairCurve.Rival> own = new EnumMap<>(FairCurve.Shape.class);
      (i == 0 ? curve.rivalsUpAStation() : curve.rivalsAboveACorner())
          .forEach(r -> own.put(r.curve().shape(), r));
      all.add(own);
    }
    Map<FairCurve.Shape, Outline> outlines = new EnumMap<>(FairCurve.Shape.class);
    TreeSet<FairCurve.Shape> shapes = new TreeSet<>();
    all.forEach(own -> shapes.addAll(own.keySet()));
    for (FairCurve.Shape shape : shapes) {
      List<Piece> other = new ArrayList<>();
      for (int i = 0; i < pieces.size(); i++) {
        other.add(new Piece(pieces.get(i).curve, all.get(i).get(shape)));
      }
      outlines.put(shape, new Outline(other));
    }
    return outlines;
  }
}
