package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.Map;
import java.util.TreeMap;

/**
 * A rule of quadrature: what each ordinate counts for.
 *
 * <p>Rules: Simpson's first h/3 (1, 4, 2, 4 … 1) over an even number of intervals, his second 3h/8
 * (1, 3, 3, 2 … 1) over a multiple of three, the trapezoidal rule, and h/12 (5, 8, −1) for the
 * first of two intervals; as in Derrett and Barrass, Ship Stability for Masters and Mates, 5th
 * edition (1999), chapter 10. An interval that no rule of equal spacing can take is integrated
 * along the {@link FairCurve} through all ordinates.
 *
 * @param x the abscissae, rising
 * @param weights one for each ordinate, in the unit of the spacing
 * @param curved whether the interval that begins at an ordinate is taken along the curve
 * @param said which rule was used where, in words
 */
record Rule(double[] x, double[] weights, boolean[] curved, Message said) {

  /** How far two spacings may differ, as a share, and still count as equal. */
  private static final double EQUAL = 1e-6;

  static final String[] WORDS = {"by-spacing", "simpson-1", "simpson-2", "trapezoidal", "5-8-1"};

  /**
   * The rule named {@code word} for ordinates at {@code x}.
   *
   * @param x rising, at least two
   * @param word one of {@link #WORDS}
   */
  static Rule named(String word, double[] x) throws TradeException {
    return switch (word) {
      case "simpson-1" -> demanded(x, 2, "Simpson's first rule", "rule.simpson.1");
      case "simpson-2" -> demanded(x, 3, "Simpson's second rule", "rule.simpson.2");
      case "trapezoidal" -> trapezoidal(x);
      case "5-8-1" -> fiveEight(x);
      default -> bySpacing(x);
    };
  }

  private static Rule weighted(double[] x, double[] weights, Message said) {
    return new Rule(x, weights, new boolean[x.length], said);
  }

  /** Each run of equal intervals by Simpson's rules where their number allows. */
  static Rule bySpacing(double[] x) {
    double[] w = new double[x.length];
    boolean[] curved = new boolean[x.length];
    Map<String, Integer> used = new TreeMap<>();
    int start = 0;
    while (start < x.length - 1) {
      int end = endOfRun(x, start);
      int n = end - start;
      double h = (x[end] - x[start]) / n;
      int first = n % 2 == 0 ? n : n >= 3 ? n - 3 : 0;
      simpson1(w, start, first, h);
      used.merge("rule.simpson.1", first, Integer::sum);
      if (n - first == 3) {
        simpson2(w, start + first, 3, h);
        used.merge("rule.simpson.2", 3, Integer::sum);
      } else if (n - first == 1) {
        curved[start + first] = true;
        used.merge("rule.spline", 1, Integer::sum);
      }
      start = end;
    }
    Message said =
        used.entrySet().stream()
            .filter(u -> u.getValue() > 0)
            .map(u -> over(u.getKey(), u.getValue()))
            .reduce((a, b) -> Message.of("rule.then", a, b))
            .orElseThrow();
    return new Rule(x, w, curved, said);
  }

  private static Message over(String rule, int intervals) {
    return Message.of(rule + (intervals == 1 ? ".one" : ".other"), intervals);
  }

  private static int endOfRun(double[] x, int start) {
    double h = x[start + 1] - x[start];
    int end = start + 1;
    while (end + 1 < x.length && Math.abs(x[end + 1] - x[end] - h) <= EQUAL * h) {
      end++;
    }
    return end;
  }

  private static Rule demanded(double[] x, int multiple, String name, String key)
      throws TradeException {
    int n = requireEqual(x, name);
    if (n % multiple != 0) {
      throw new TradeException(
          "rule",
          Sentence.of("{0} cannot take {1} ordinates.", name, n + 1),
          multiple == 2
              ? "It needs an odd number of ordinates; add or leave out one, or write rule: by-spacing."
              : "It needs 4, 7, 10 … ordinates; add or leave out one, or write rule: by-spacing.");
    }
    double[] w = new double[x.length];
    double h = (x[n] - x[0]) / n;
    if (multiple == 2) {
      simpson1(w, 0, n, h);
    } else {
      simpson2(w, 0, n, h);
    }
    return weighted(x, w, over(key, n));
  }

  private static Rule trapezoidal(double[] x) {
    double[] w = new double[x.length];
    for (int i = 0; i + 1 < x.length; i++) {
      w[i] += (x[i + 1] - x[i]) / 2;
      w[i + 1] += (x[i + 1] - x[i]) / 2;
    }
    return weighted(x, w, over("rule.trapezoidal", x.length - 1));
  }

  private static Rule fiveEight(double[] x) throws TradeException {
    if (requireEqual(x, "The 5, 8, -1 rule") != 2) {
      throw new TradeException(
          "rule",
          Sentence.of("The 5, 8, -1 rule takes three ordinates, not {0}.", x.length),
          "Give the two ends of the interval and the next ordinate.");
    }
    double h = (x[2] - x[0]) / 2;
    return weighted(
        x, new double[] {5 * h / 12, 8 * h / 12, -h / 12}, Message.of("rule.five.eight"));
  }

  private static int requireEqual(double[] x, String name) throws TradeException {
    if (endOfRun(x, 0) != x.length - 1) {
      throw new TradeException(
          "rule",
          Sentence.of("{0} needs equal spacing, and the ordinates are not equally spaced.", name),
          "Write rule: by-spacing, which chooses a rule for each run of equal intervals.");
    }
    return x.length - 1;
  }

  private static void simpson1(double[] w, int start, int n, double h) {
    for (int i = start; i < start + n; i += 2) {
      w[i] += h / 3;
      w[i + 1] += 4 * h / 3;
      w[i + 2] += h / 3;
    }
  }

  private static void simpson2(double[] w, int start, int n, double h) {
    for (int i = start; i < start + n; i += 3) {
      w[i] += 3 * h / 8;
      w[i + 1] += 9 * h / 8;
      w[i + 2] += 9 * h / 8;
      w[i + 3] += 3 * h / 8;
    }
  }

  /** The integral of ordinates {@code y}. */
  double of(double[] y) {
    return moment(y, 0);
  }

  /** The integral of {@code x} to the power {@code n} times {@code y}. */
  double moment(double[] y, int n) {
    double sum = 0;
    for (int i = 0; i < y.length; i++) {
      sum += weights[i] * Math.pow(x[i], n) * y[i];
    }
    return sum + curvedMoment(y, n);
  }

  /**
   * The integral of x to the power {@code n} times {@code y}, each ordinate with its multiplier.
   */
  Terms terms(String before, double[] y, int n, Unit across, Unit up) throws TradeException {
    Terms terms = new Terms(before, "(");
    Unit to = across.power(n + 1);
    for (int i = 0; i < y.length; i++) {
      double multiplier = weights[i] * Math.pow(x[i], n);
      if (multiplier != 0 && y[i] != 0) {
        terms.add(Si.show(multiplier, to, to), " × ", Si.show(y[i], up, up));
      }
    }
    if (curvedMoment(y, n) != 0) {
      Unit whole = to.times(up);
      terms.add(Si.show(curvedMoment(y, n), whole, whole));
    }
    return terms.isEmpty() ? terms.add("0") : terms;
  }

  private double curvedMoment(double[] y, int n) {
    double sum = 0;
    FairCurve curve = null;
    for (int i = 0; i + 1 < y.length; i++) {
      if (curved[i]) {
        curve = curve == null ? FairCurve.alongAHull(x, y) : curve;
        sum += curve.integral(x[i], x[i + 1], (place, half) -> Math.pow(place, n) * half);
      }
    }
    return sum;
  }
}
