package chinelog.reckon.trade;

import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * A fair curve through given ordinates at any spacing, such as the half-breadths up a station or
 * the areas of the stations along a hull, and exact integrals of it.
 *
 * <p>Through six ordinates or fewer goes one polynomial; through more, a cubic spline whose end
 * pieces share one cubic with their neighbours (de Boor, A Practical Guide to Splines, revised
 * edition 2001, chapter IV, "not-a-knot"). Neither is right where a curve starts square to its
 * axis, as a round bottom does at the keel; so each {@link Shape} is tried on the ordinates: every
 * one in turn is left out and told from the others, and a shape other than the plain one is taken
 * where it tells them far better.
 */
final class FairCurve {

  /** One polynomial goes through no more ordinates than this; through more it would swing. */
  private static final int MOST_FOR_POLYNOMIAL = 6;

  /** Ordinates told to this part of the largest are told as well as can be. */
  private static final double AS_GOOD_AS_EXACT = 1e-9;

  private static final double AS_GOOD_AS_ZERO = 1e-6;

  /** By so much a shape may tell more than its own misses do. */
  private static final double BENEFIT_OF_DOUBT = 3;

  private static final int SAMPLES = 16;

  /** Among more ordinates than this, to leave out each in turn would tell no more. */
  private static final int MOST_LEFT_OUT = 24;

  /** How a curve meets its ends, and what it is a smooth function of. */
  enum Shape {
    /** Smooth all along. */
    PLAIN(1),
    /** Smooth in the root of the distance from the start: may start square or at an angle. */
    ROOT(0.1),
    /** Starts square, as the root of the distance times what is smooth. */
    ROUND(0.1),
    /** Starts fuller yet: as the fourth root of the distance times what is smooth. */
    FULL(0.1),
    /** Starts and ends square wherever it is zero there. */
    ELLIPTIC(0.1),
    /** The same, fuller yet. */
    BLUNT(0.1),
    /** Rises and falls no more than its ordinates: for corners. */
    MONOTONE(0.5);

    private final double margin;

    Shape(double margin) {
      this.margin = margin;
    }

    Message said() {
      return Message.of("shape." + name().toLowerCase(Locale.ROOT));
    }
  }

  private static final Shape[] UP_A_STATION = {
    Shape.PLAIN, Shape.ROOT, Shape.ROUND, Shape.FULL, Shape.MONOTONE
  };

  private static final Shape[] ABOVE_A_CORNER = {Shape.PLAIN, Shape.MONOTONE};

  private static final Shape[] ALONG_A_HULL = {
    Shape.PLAIN, Shape.ELLIPTIC, Shape.BLUNT, Shape.MONOTONE
  };

  private final Shape shape;
  private final double start;
  private final double end;
  private final boolean zeroStart;
  private final boolean zeroEnd;
  private final double base;
  private final double[] x;
  private final Interpolant smooth;

  private FairCurve(Shape shape, double[] x, double[] y) {
    this(shape, x, y, isZero(y[0], y), isZero(y[y.length - 1], y));
  }

  private FairCurve(Shape shape, double[] x, double[] y, boolean zeroStart, boolean zeroEnd) {
    this.shape = shape;
    this.x = x;
    start = x[0];
    end = x[x.length - 1];
    this.zeroStart = zeroStart;
    this.zeroEnd = zeroEnd;
    base = shape == Shape.ROUND || shape == Shape.FULL ? y[0] : 0;
    int n = 0;
    double[] u = new double[x.length];
    double[] v = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      double factor = factor(x[i]);
      if (factor > 0) {
        u[n] = shape == Shape.ROOT ? Math.sqrt(x[i] - start) : x[i];
        v[n++] = (y[i] - base) / factor;
      }
    }
    smooth =
        Interpolant.through(
            Arrays.copyOf(u, n),
            Arrays.copyOf(v, n),
            shape == Shape.MONOTONE,
            n <= MOST_FOR_POLYNOMIAL);
  }

  /**
   * The outline of a station from its keel.
   *
   * @param z heights, rising, at least two
   * @param y half-breadths at those heights
   */
  static FairCurve upAStation(double[] z, double[] y) {
    return best(UP_A_STATION, z, y);
  }

  /** The same from a corner of it, such as a chine. */
  static FairCurve aboveACorner(double[] z, double[] y) {
    return best(ABOVE_A_CORNER, z, y);
  }

  /**
   * Ordinates along a hull, such as areas of stations.
   *
   * @param x rising, at least two
   */
  static FairCurve alongAHull(double[] x, double[] y) {
    return best(ALONG_A_HULL, x, y);
  }

  /**
   * One of a shape that was found before, so that figures do not jump from one curve to another.
   */
  static FairCurve of(Shape shape, double[] x, double[] y) {
    return new FairCurve(shape, x, y);
  }

  /** A curve of the same shape through other ordinates at the same places. */
  FairCurve like(double[] y) {
    boolean sameEnds = isZero(y[0], y) == zeroStart && isZero(y[y.length - 1], y) == zeroEnd;
    return shape != Shape.ELLIPTIC && shape != Shape.BLUNT || sameEnds
        ? new FairCurve(shape, x, y)
        : alongAHull(x, y);
  }

  private static FairCurve best(Shape[] shapes, double[] x, double[] y) {
    FairCurve plain = new FairCurve(Shape.PLAIN, x, y);
    double largest = Arrays.stream(y).map(Math::abs).max().orElse(0);
    double plainMiss = plain.isNegative(y) ? Double.MAX_VALUE : miss(Shape.PLAIN, x, y);
    FairCurve best = plain;
    double least = plainMiss;
    if (x.length < 3 || plainMiss <= Math.pow(AS_GOOD_AS_EXACT * largest, 2) * x.length) {
      return plain;
    }
    for (Shape shape : shapes) {
      if (shape == Shape.PLAIN || !fits(shape, x, y)) {
        continue;
      }
      double miss = miss(shape, x, y);
      if (miss < plainMiss * shape.margin && miss < least) {
        FairCurve curve = new FairCurve(shape, x, y);
        if (!curve.isNegative(y)) {
          best = curve;
          least = miss;
        }
      }
    }
    return best == plain && plainMiss == Double.MAX_VALUE
        ? new FairCurve(Shape.MONOTONE, x, y)
        : best;
  }

  /** Another curve through the same ordinates, and how much it tells of this one, up to 1. */
  record Rival(FairCurve curve, double weight) {}

  /** The curves of all other shapes that a station's outline may have. */
  List<Rival> rivalsUpAStation() {
    return rivals(UP_A_STATION);
  }

  /** The curves of all other shapes that an outline may have above a corner. */
  List<Rival> rivalsAboveACorner() {
    return rivals(ABOVE_A_CORNER);
  }

  /** The curves of all other shapes that ordinates along a hull may have. */
  List<Rival> rivalsAlongAHull() {
    return rivals(ALONG_A_HULL);
  }

  /** None through two ordinates, between which it is straight because nothing else is told. */
  private List<Rival> rivals(Shape[] shapes) {
    if (x.length < 3) {
      return List.of();
    }
    double[] y = Arrays.stream(x).map(this::at).toArray();
    List<Rival> all = new ArrayList<>();
    for (Shape other : shapes) {
      double weight = other == shape ? 0 : weight(other, y);
      if (weight > 0) {
        all.add(new Rival(new FairCurve(other, x, y), weight));
      }
    }
    return all;
  }

  /**
   * How much a curve of another shape through the same ordinates may tell of how far this one is
   * out, up to 1: the less, the worse that shape tells ordinates that are left out.
   */
  double weight(Shape other) {
    return weight(other, Arrays.stream(x).map(this::at).toArray());
  }

  private double weight(Shape other, double[] y) {
    if (!fits(other, x, y)) {
      return 0;
    }
    double largest = Arrays.stream(y).map(Math::abs).max().orElse(0);
    double least = Math.pow(AS_GOOD_AS_EXACT * largest, 2) * x.length;
    double own = Math.max(least, miss(shape, x, y));
    return Math.min(1, BENEFIT_OF_DOUBT * Math.sqrt(own / Math.max(least, miss(other, x, y))));
  }

  /** Whether enough ordinates are left where the shape's own factor is not zero. */
  private static boolean fits(Shape shape, double[] x, double[] y) {
    return switch (shape) {
      case PLAIN, ROOT, MONOTONE -> true;
      case ROUND, FULL -> x.length > 3;
      case ELLIPTIC, BLUNT -> x.length > 4 && (isZero(y[0], y) || isZero(y[y.length - 1], y));
    };
  }

  private static boolean isZero(double end, double[] y) {
    return Math.abs(end) <= AS_GOOD_AS_ZERO * Arrays.stream(y).map(Math::abs).max().orElse(0);
  }

  /** The sum of the squares by which inner ordinates are missed when told from the others. */
  private static double miss(Shape shape, double[] x, double[] y) {
    double sum = 0;
    for (int k : someOf(1, x.length - 1)) {
      double miss = new FairCurve(shape, without(x, k), without(y, k)).at(x[k]) - y[k];
      sum += miss * miss;
    }
    return sum;
  }

  /** Numbers from one to before another: all of them, or where they are many, some evenly apart. */
  static int[] someOf(int from, int to) {
    int n = Math.min(Math.max(0, to - from), MOST_LEFT_OUT);
    return IntStream.range(0, n).map(i -> from + (int) ((long) (to - from) * i / n)).toArray();
  }

  static double[] without(double[] all, int k) {
    double[] rest = new double[all.length - 1];
    System.arraycopy(all, 0, rest, 0, k);
    System.arraycopy(all, k + 1, rest, k, rest.length - k);
    return rest;
  }

  /** Whether the curve runs below zero where its ordinates do not. */
  private boolean isNegative(double[] y) {
    double least = Math.min(0, Arrays.stream(y).min().orElse(0));
    double spare = AS_GOOD_AS_EXACT * Arrays.stream(y).max().orElse(0);
    for (int i = 1; i < x.length; i++) {
      for (int k = 1; k < SAMPLES; k++) {
        if (at(x[i - 1] + (x[i] - x[i - 1]) * k / SAMPLES) < least - spare) {
          return true;
        }
      }
    }
    return false;
  }

  private double factor(double at) {
    return switch (shape) {
      case PLAIN, ROOT, MONOTONE -> 1;
      case ROUND -> Math.sqrt(Math.max(0, at - start));
      case FULL -> Math.sqrt(Math.sqrt(Math.max(0, at - start)));
      case ELLIPTIC -> Math.sqrt(fromZeroEnds(at));
      case BLUNT -> Math.sqrt(Math.sqrt(fromZeroEnds(at)));
    };
  }

  private double fromZeroEnds(double at) {
    return (zeroStart ? Math.max(0, at - start) : 1) * (zeroEnd ? Math.max(0, end - at) : 1);
  }

  double at(double place) {
    double u = shape == Shape.ROOT ? Math.sqrt(Math.max(0, place - start)) : place;
    return base + factor(place) * smooth.at(u);
  }

  double start() {
    return start;
  }

  /** How many ordinates it goes through. */
  int size() {
    return x.length;
  }

  /** Places to draw it by, so many from one ordinate to the next; close where it is steep. */
  double[] places(int pieces) {
    return DoubleStream.concat(
            DoubleStream.of(start),
            IntStream.range(1, x.length)
                .mapToObj(i -> places(parameter(x[i - 1]), parameter(x[i]), pieces))
                .flatMapToDouble(Arrays::stream))
        .toArray();
  }

  private double[] places(double from, double to, int pieces) {
    return IntStream.rangeClosed(1, pieces)
        .mapToDouble(k -> place(from + (to - from) * k / pieces))
        .toArray();
  }

  Shape shape() {
    return shape;
  }

  /** The integral of {@code f(x, y)} from one place of the curve to another. */
  double integral(double from, double to, DoubleBinaryOperator f) {
    double sum = 0;
    for (int i = 1; i < x.length; i++) {
      sum += piece(i, from, to, f);
    }
    return sum;
  }

  /** What each interval between ordinates has of an integral over the whole curve. */
  double[] pieces(DoubleBinaryOperator f) {
    return pieces(start, end, f);
  }

  /** What each interval has of an integral from one place to another. */
  double[] pieces(double from, double to, DoubleBinaryOperator f) {
    return IntStream.range(1, x.length).mapToDouble(i -> piece(i, from, to, f)).toArray();
  }

  private double piece(int i, double from, double to, DoubleBinaryOperator f) {
    double a = parameter(Math.max(x[i - 1], from));
    double b = parameter(Math.min(x[i], to));
    return b <= a
        ? 0
        : GaussLegendre.over(
            a,
            b,
            t -> {
              double place = place(t);
              return f.applyAsDouble(place, at(place)) * speed(t);
            });
  }

  /** Whether an integral of this curve is a sum of its ordinates, each times its multiplier. */
  boolean hasMultipliers() {
    return shape != Shape.MONOTONE;
  }

  /**
   * The multipliers of the ordinates, as Simpson's 1, 4, 1 are those of his curve: the integral of
   * {@code weight(x) y} is the sum of the ordinates, each times its own. For a curve that {@link
   * #hasMultipliers}.
   */
  double[] multipliers(double from, double to, DoubleUnaryOperator weight) {
    double[] all = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      double[] one = new double[x.length];
      one[i] = 1;
      FairCurve unit = new FairCurve(shape, x, one, zeroStart, zeroEnd);
      all[i] = unit.integral(from, to, (at, y) -> weight.applyAsDouble(at) * y);
    }
    return all;
  }

  /** The same over the whole curve. */
  double[] multipliers(DoubleUnaryOperator weight) {
    return multipliers(start, end, weight);
  }

  /** The integral of {@code f(x, y)} over the whole curve. */
  double integral(DoubleBinaryOperator f) {
    return integral(start, end, f);
  }

  /** What the curve is integrated over, so that no slope is infinite. */
  private double parameter(double place) {
    return switch (shape) {
      case PLAIN, MONOTONE -> place;
      case ROOT, ROUND -> Math.sqrt(place - start);
      case FULL -> Math.sqrt(Math.sqrt(place - start));
      case ELLIPTIC -> angle((place - start) / (end - start));
      case BLUNT -> angle(angle((place - start) / (end - start)) / Math.PI);
    };
  }

  private static double angle(double share) {
    return Math.acos(Math.max(-1, Math.min(1, 1 - 2 * share)));
  }

  private static double share(double angle) {
    return (1 - Math.cos(angle)) / 2;
  }

  private double place(double t) {
    return switch (shape) {
      case PLAIN, MONOTONE -> t;
      case ROOT, ROUND -> start + t * t;
      case FULL -> start + t * t * t * t;
      case ELLIPTIC -> start + (end - start) * share(t);
      case BLUNT -> start + (end - start) * share(Math.PI * share(t));
    };
  }

  private double speed(double t) {
    return switch (shape) {
      case PLAIN, MONOTONE -> 1;
      case ROOT, ROUND -> 2 * t;
      case FULL -> 4 * t * t * t;
      case ELLIPTIC -> (end - start) / 2 * Math.sin(t);
      case BLUNT -> (end - start) / 2 * Math.sin(Math.PI * share(t)) * Math.PI / 2 * Math.sin(t);
    };
  }
}
