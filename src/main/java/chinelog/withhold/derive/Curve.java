package chinelog.withhold.derive;

import chinelog.quantity.Gauge;
import chinelog.quantity.QuantityException;
import java.util.List;

/**
 * Any other function. Of most no more is known here than how to evaluate it, so that what rests on
 * one is told to be safe only where two sets of values show it.
 */
final class Curve extends RangedFormula {

  private static final double STEP = 1e-6;

  private final String function;
  private final List<RangedFormula> of;

  Curve(String function, List<RangedFormula> of) {
    this.function = function;
    this.of = of;
  }

  @Override
  double value(double[] x) {
    double v = of.get(0).value(x);
    return switch (function) {
      case "nearest" -> nearest(v, x);
      case "spread" -> spread(x);
      default -> curve(v);
    };
  }

  private double curve(double v) {
    return switch (function) {
      case "sin" -> StrictMath.sin(v);
      case "cos" -> StrictMath.cos(v);
      case "tan" -> StrictMath.tan(v);
      case "asin" -> StrictMath.asin(v);
      case "acos" -> StrictMath.acos(v);
      case "atan" -> StrictMath.atan(v);
      case "exp" -> StrictMath.exp(v);
      case "ln" -> StrictMath.log(v);
      default -> gauge(v);
    };
  }

  private double gauge(double v) {
    Gauge gauge =
        Gauge.find(function)
            .orElseThrow(() -> new IllegalArgumentException("no function is named " + function));
    try {
      return gauge.size((int) Math.rint(v)).coherent();
    } catch (QuantityException e) {
      return Double.NaN;
    }
  }

  private double nearest(double wanted, double[] x) {
    double best = Double.NaN;
    for (RangedFormula size : of.subList(1, of.size())) {
      double s = size.value(x);
      best = Double.isNaN(best) || Math.abs(s - wanted) < Math.abs(best - wanted) ? s : best;
    }
    return best;
  }

  private double spread(double[] x) {
    double mean = of.stream().mapToDouble(f -> f.value(x)).sum() / of.size();
    double squares = of.stream().mapToDouble(f -> Math.pow(f.value(x) - mean, 2)).sum();
    return Math.sqrt(squares / (of.size() - 1));
  }

  @Override
  void slopes(double[] x, double seed, boolean smooth, double[] slopes) {
    switch (function) {
      case "nearest" -> {
        if (smooth) {
          of.get(0).slopes(x, seed, true, slopes);
        }
      }
      case "spread" -> {
        double mean = of.stream().mapToDouble(f -> f.value(x)).sum() / of.size();
        double spread = spread(x);
        for (RangedFormula f : of) {
          double slope = spread == 0 ? 0 : (f.value(x) - mean) / ((of.size() - 1) * spread);
          f.slopes(x, seed * slope, smooth, slopes);
        }
      }
      default -> {
        if (Gauge.find(function).isEmpty()) {
          double v = of.get(0).value(x);
          double h = STEP * Math.max(1e-3, Math.abs(v));
          of.get(0).slopes(x, seed * (curve(v + h) - curve(v - h)) / (2 * h), smooth, slopes);
        }
      }
    }
  }

  @Override
  Interval computeRange(Interval[] x) {
    Interval r = Interval.ALL;
    for (RangedFormula f : of) {
      r = f.range(x);
    }
    return of.size() > 1 ? Interval.ALL : ranged(r);
  }

  /** Where the function only rises, from end to end. */
  private Interval ranged(Interval r) {
    return switch (function) {
      case "sin", "cos" -> new Interval(Math.nextDown(-1), Math.nextUp(1));
      case "exp", "atan" -> between(curve(r.low()), curve(r.high()));
      case "asin" -> between(curve(Math.max(-1, r.low())), curve(Math.min(1, r.high())));
      case "ln" -> between(curve(Math.max(0, r.low())), curve(Math.max(0, r.high())));
      default -> Interval.ALL;
    };
  }

  private static Interval between(double low, double high) {
    // StrictMath is good to one place in the last.
    return Double.isNaN(low) || Double.isNaN(high)
        ? Interval.ALL
        : new Interval(Math.nextDown(Math.nextDown(low)), Math.nextUp(Math.nextUp(high)));
  }

  @Override
  void narrowParts(Interval wanted, Interval[] x) {
    Interval inner =
        switch (function) {
          case "ln" -> between(StrictMath.exp(wanted.low()), StrictMath.exp(wanted.high()));
          case "exp" ->
              wanted.low() > 0
                  ? between(StrictMath.log(wanted.low()), StrictMath.log(wanted.high()))
                  : Interval.ALL;
          default -> Interval.ALL;
        };
    if (of.size() == 1) {
      of.get(0).narrow(inner, x);
    }
  }
}
