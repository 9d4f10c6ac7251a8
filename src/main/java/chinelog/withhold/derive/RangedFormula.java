package chinelog.withhold.derive;

import java.util.List;

/** A formula over numbered quantities that can be evaluated, differentiated and narrowed. */
abstract class RangedFormula {

  /** The range found on the way up, for the way down. */
  private Interval range = Interval.ALL;

  abstract double value(double[] x);

  /**
   * Adds to {@code slopes} the derivative by every quantity, times {@code seed}.
   *
   * @param smooth whether rounding is to be taken for the identity rather than for steps
   */
  abstract void slopes(double[] x, double seed, boolean smooth, double[] slopes);

  abstract Interval computeRange(Interval[] x);

  /** Narrows the quantities in {@code x} to those for which this may lie in {@code wanted}. */
  abstract void narrowParts(Interval wanted, Interval[] x);

  final Interval range(Interval[] x) {
    range = computeRange(x);
    return range;
  }

  final Interval range() {
    return range;
  }

  final void narrow(Interval wanted, Interval[] x) {
    narrowParts(wanted.meet(range), x);
  }

  static final class Constant extends RangedFormula {
    private final double value;

    Constant(double value) {
      this.value = value;
    }

    @Override
    double value(double[] x) {
      return value;
    }

    @Override
    void slopes(double[] x, double seed, boolean smooth, double[] slopes) {}

    @Override
    Interval computeRange(Interval[] x) {
      return new Interval(Math.nextDown(value), Math.nextUp(value));
    }

    @Override
    void narrowParts(Interval wanted, Interval[] x) {}
  }

  static final class Variable extends RangedFormula {
    private final int index;

    Variable(int index) {
      this.index = index;
    }

    @Override
    double value(double[] x) {
      return x[index];
    }

    @Override
    void slopes(double[] x, double seed, boolean smooth, double[] slopes) {
      slopes[index] += seed;
    }

    @Override
    Interval computeRange(Interval[] x) {
      return x[index];
    }

    @Override
    void narrowParts(Interval wanted, Interval[] x) {
      x[index] = x[index].meet(wanted);
    }
  }

  /** A sum with a factor of its own for each term. */
  static final class Sum extends RangedFormula {
    private final List<RangedFormula> terms;
    private final double[] factors;

    Sum(List<RangedFormula> terms, double[] factors) {
      this.terms = terms;
      this.factors = factors;
    }

    @Override
    double value(double[] x) {
      double sum = 0;
      for (int i = 0; i < factors.length; i++) {
        sum += factors[i] * terms.get(i).value(x);
      }
      return sum;
    }

    @Override
    void slopes(double[] x, double seed, boolean smooth, double[] slopes) {
      for (int i = 0; i < factors.length; i++) {
        terms.get(i).slopes(x, seed * factors[i], smooth, slopes);
      }
    }

    private Interval term(int i) {
      return terms.get(i).range().times(Interval.of(factors[i]));
    }

    @Override
    Interval computeRange(Interval[] x) {
      Interval sum = Interval.of(0);
      for (int i = 0; i < factors.length; i++) {
        terms.get(i).range(x);
        sum = sum.plus(term(i));
      }
      return sum;
    }

    @Override
    void narrowParts(Interval wanted, Interval[] x) {
      int n = factors.length;
      Interval[] after = new Interval[n + 1];
      after[n] = Interval.of(0);
      for (int i = n - 1; i > 0; i--) {
        after[i] = after[i + 1].plus(term(i));
      }
      Interval before = Interval.of(0);
      for (int i = 0; i < n; i++) {
        Interval others = before.plus(after[i + 1]);
        Interval own = term(i);
        terms.get(i).narrow(wanted.minus(others).dividedBy(Interval.of(factors[i])), x);
        before = before.plus(own);
      }
    }
  }

  static final class Product extends RangedFormula {
    private final RangedFormula left;
    private final RangedFormula right;

    Product(RangedFormula left, RangedFormula right) {
      this.left = left;
      this.right = right;
    }

    @Override
    double value(double[] x) {
      return left.value(x) * right.value(x);
    }

    @Override
    void slopes(double[] x, double seed, boolean smooth, double[] slopes) {
      left.slopes(x, seed * right.value(x), smooth, slopes);
      right.slopes(x, seed * left.value(x), smooth, slopes);
    }

    @Override
    Interval computeRange(Interval[] x) {
      return left.range(x).times(right.range(x));
    }

    @Override
    void narrowParts(Interval wanted, Interval[] x) {
      Interval l = left.range();
      Interval r = right.range();
      // A factor that may be 0 tells nothing of the other, unless the product is not.
      left.narrow(r.contains(0) && wanted.contains(0) ? Interval.ALL : wanted.dividedBy(r), x);
      right.narrow(l.contains(0) && wanted.contains(0) ? Interval.ALL : wanted.dividedBy(l), x);
    }
  }

  static final class Quotient extends RangedFormula {
    private final RangedFormula over;
    private final RangedFormula under;

    Quotient(RangedFormula over, RangedFormula under) {
      this.over = over;
      this.under = under;
    }

    @Override
    double value(double[] x) {
      return over.value(x) / under.value(x);
    }

    @Override
    void slopes(double[] x, double seed, boolean smooth, double[] slopes) {
      double u = under.value(x);
      over.slopes(x, seed / u, smooth, slopes);
      under.slopes(x, -seed * over.value(x) / (u * u), smooth, slopes);
    }

    @Override
    Interval computeRange(Interval[] x) {
      return over.range(x).dividedBy(under.range(x));
    }

    @Override
    void narrowParts(Interval wanted, Interval[] x) {
      Interval o = over.range();
      Interval u = under.range();
      over.narrow(wanted.times(u), x);
      under.narrow(o.contains(0) && wanted.contains(0) ? Interval.ALL : o.dividedBy(wanted), x);
    }
  }

  static final class Power extends RangedFormula {
    private final RangedFormula base;
    private final double exponent;

    Power(RangedFormula base, double exponent) {
      this.base = base;
      this.exponent = exponent;
    }

    @Override
    double value(double[] x) {
      return StrictMath.pow(base.value(x), exponent);
    }

    @Override
    void slopes(double[] x, double seed, boolean smooth, double[] slopes) {
      double slope = exponent * StrictMath.pow(base.value(x), exponent - 1);
      base.slopes(x, seed * slope, smooth, slopes);
    }

    @Override
    Interval computeRange(Interval[] x) {
      return base.range(x).power(exponent);
    }

    @Override
    void narrowParts(Interval wanted, Interval[] x) {
      base.narrow(wanted.root(exponent, base.range()), x);
    }
  }

  /** The least or the greatest of some. */
  static final class Extreme extends RangedFormula {
    private final List<RangedFormula> of;
    private final boolean greatest;

    Extreme(List<RangedFormula> of, boolean greatest) {
      this.of = of;
      this.greatest = greatest;
    }

    @Override
    double value(double[] x) {
      return chosen(x).value(x);
    }

    private RangedFormula chosen(double[] x) {
      RangedFormula best = of.get(0);
      for (RangedFormula f : of) {
        double difference = f.value(x) - best.value(x);
        if (greatest ? difference > 0 : difference < 0) {
          best = f;
        }
      }
      return best;
    }

    @Override
    void slopes(double[] x, double seed, boolean smooth, double[] slopes) {
      chosen(x).slopes(x, seed, smooth, slopes);
    }

    @Override
    Interval computeRange(Interval[] x) {
      Interval all = of.get(0).range(x);
      for (RangedFormula f : of) {
        Interval r = f.range(x);
        all =
            greatest
                ? new Interval(Math.max(all.low(), r.low()), Math.max(all.high(), r.high()))
                : new Interval(Math.min(all.low(), r.low()), Math.min(all.high(), r.high()));
      }
      return all;
    }

    @Override
    void narrowParts(Interval wanted, Interval[] x) {
      Interval beyond =
          greatest
              ? new Interval(Double.NEGATIVE_INFINITY, wanted.high())
              : new Interval(wanted.low(), Double.POSITIVE_INFINITY);
      List<RangedFormula> able =
          of.stream().filter(f -> !f.range().meet(wanted).isEmpty()).toList();
      for (RangedFormula f : of) {
        f.narrow(able.size() == 1 && able.get(0) == f ? wanted : beyond, x);
      }
    }
  }

  /** What rounds, and the absolute value. */
  static final class Step extends RangedFormula {
    private final String function;
    private final RangedFormula of;

    /**
     * @param function round (half up), ceil, floor or abs
     */
    Step(String function, RangedFormula of) {
      this.function = function;
      this.of = of;
    }

    @Override
    double value(double[] x) {
      double v = of.value(x);
      return switch (function) {
        case "round" -> Math.floor(v + 0.5);
        case "ceil" -> Math.ceil(v);
        case "floor" -> Math.floor(v);
        default -> Math.abs(v);
      };
    }

    @Override
    void slopes(double[] x, double seed, boolean smooth, double[] slopes) {
      if (function.equals("abs")) {
        of.slopes(x, seed * Math.signum(of.value(x)), smooth, slopes);
      } else if (smooth) {
        of.slopes(x, seed, true, slopes);
      }
    }

    @Override
    Interval computeRange(Interval[] x) {
      Interval r = of.range(x);
      return switch (function) {
        case "round" -> new Interval(Math.floor(r.low() + 0.5), Math.floor(r.high() + 0.5));
        case "ceil" -> new Interval(Math.ceil(r.low()), Math.ceil(r.high()));
        case "floor" -> new Interval(Math.floor(r.low()), Math.floor(r.high()));
        default -> {
          double most = Math.max(Math.abs(r.low()), Math.abs(r.high()));
          double least = r.contains(0) ? 0 : Math.min(Math.abs(r.low()), Math.abs(r.high()));
          yield new Interval(least, most);
        }
      };
    }

    @Override
    void narrowParts(Interval wanted, Interval[] x) {
      double from = Math.ceil(wanted.low());
      double to = Math.floor(wanted.high());
      Interval inner =
          switch (function) {
            case "round" -> new Interval(from - 0.5, to + 0.5);
            case "ceil" -> new Interval(from - 1, to);
            case "floor" -> new Interval(from, to + 1);
            default -> of.range().low() >= 0 ? wanted : new Interval(-wanted.high(), wanted.high());
          };
      of.narrow(inner, x);
    }
  }
}
