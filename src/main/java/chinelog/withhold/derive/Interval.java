package chinelog.withhold.derive;

/**
 * All numbers from {@code low} to {@code high}, both included; either may be infinite.
 *
 * <p>Every operation rounds outward, so that the true result is never outside.
 */
record Interval(double low, double high) {

  static final Interval ALL = new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
  static final Interval NOT_NEGATIVE = new Interval(0, Double.POSITIVE_INFINITY);

  static Interval of(double value) {
    return new Interval(value, value);
  }

  /** What was computed, made wider by a last place at either end. */
  private static Interval outward(double low, double high) {
    return new Interval(Math.nextDown(low), Math.nextUp(high));
  }

  boolean isEmpty() {
    return !(low <= high);
  }

  boolean contains(double value) {
    return low <= value && value <= high;
  }

  double width() {
    return high - low;
  }

  Interval meet(Interval other) {
    return new Interval(Math.max(low, other.low), Math.min(high, other.high));
  }

  Interval plus(Interval other) {
    return outward(low + other.low, high + other.high);
  }

  Interval minus(Interval other) {
    return outward(low - other.high, high - other.low);
  }

  Interval times(Interval other) {
    double a = product(low, other.low);
    double b = product(low, other.high);
    double c = product(high, other.low);
    double d = product(high, other.high);
    return outward(
        Math.min(Math.min(a, b), Math.min(c, d)), Math.max(Math.max(a, b), Math.max(c, d)));
  }

  /** Infinity times nothing is nothing: the bound is never reached. */
  private static double product(double a, double b) {
    return a == 0 || b == 0 ? 0 : a * b;
  }

  Interval dividedBy(Interval other) {
    if (other.low > 0 || other.high < 0) {
      return times(outward(1 / other.high, 1 / other.low));
    }
    if (other.low == 0 && other.high > 0) {
      return times(outward(1 / other.high, Double.POSITIVE_INFINITY));
    }
    if (other.high == 0 && other.low < 0) {
      return times(outward(Double.NEGATIVE_INFINITY, 1 / other.low));
    }
    return ALL;
  }

  /** To a constant power; for other than whole powers the negative part is dropped. */
  Interval power(double exponent) {
    boolean whole = exponent == Math.rint(exponent);
    if (exponent < 0) {
      return of(1).dividedBy(power(-exponent));
    }
    if (!whole || low >= 0) {
      double from = Math.max(0, low);
      return high < 0
          ? new Interval(1, 0)
          : wide(StrictMath.pow(from, exponent), StrictMath.pow(high, exponent));
    }
    double a = StrictMath.pow(low, exponent);
    double b = StrictMath.pow(high, exponent);
    boolean even = exponent % 2 == 0;
    return even && high > 0 ? wide(0, Math.max(a, b)) : wide(Math.min(a, b), Math.max(a, b));
  }

  /** The library's powers and roots may be one last place off. */
  private static Interval wide(double low, double high) {
    return new Interval(
        low == 0 ? 0 : Math.nextDown(Math.nextDown(low)), Math.nextUp(Math.nextUp(high)));
  }

  /** Numbers whose power this is; only those not negative where {@code among} holds no others. */
  Interval root(double exponent, Interval among) {
    boolean odd = exponent == Math.rint(exponent) && Math.abs(exponent) % 2 == 1;
    if (odd && low < 0) {
      double a = Math.copySign(StrictMath.pow(Math.abs(low), 1 / exponent), low);
      double b = Math.copySign(StrictMath.pow(Math.abs(high), 1 / exponent), high);
      return exponent < 0 ? among : outward(Math.nextDown(a), Math.nextUp(b));
    }
    Interval positive = meet(NOT_NEGATIVE);
    if (positive.isEmpty()) {
      return positive;
    }
    Interval root = positive.power(1 / exponent);
    return among.low >= 0 || exponent != Math.rint(exponent) || odd
        ? root
        : new Interval(-root.high, root.high);
  }
}
