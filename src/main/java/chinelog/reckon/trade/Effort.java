package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.List;

/**
 * How long work takes: three-point estimates and learning.
 *
 * <p>Three points: te = (O + 4M + P)/6, σ = (P − O)/6, in a row Σte and √Σσ² (Malcolm et al., 1959,
 * from memory). Learning: b = log2 of the rate; Crawford's unit time a nᵇ, Wright's cumulative
 * average a nᵇ (formulas of the R package learningCurve).
 */
final class Effort {

  static final TradeReckoning THREE_POINT =
      new TradeReckoning(
              "three-point",
              "Hours from a low, a likely and a high estimate",
              List.of(Parameter.table("estimates", "one after another", "low", "likely", "high")),
              Effort::threePoint)
          .yielding(
              "expected", "effort.expected",
              "spread", "effort.deviation");

  static final TradeReckoning LEARNING =
      new TradeReckoning(
              "learning",
              "Hours when the same is built again",
              List.of(
                  Parameter.quantity("first", "hours for the first", Unit.HOUR),
                  Parameter.quantity(
                      "rate", "what a doubling of the number brings the hours to", Unit.ONE),
                  Parameter.quantity("number", "which one, counted from the first", Unit.ONE),
                  Parameter.word("curve", "whose", "crawford", "wright").or("crawford")),
              Effort::learning)
          .yielding(
              "exponent", "effort.exponent",
              "last", "effort.last",
              "total", "effort.total",
              "average", "effort.average");

  /** A longer sum is told by what it comes to. */
  private static final int MOST_TOLD = 24;

  private Effort() {}

  /** {@code {te, σ}} of one estimate. */
  static double[] estimate(double low, double likely, double high) {
    return new double[] {(low + 4 * likely + high) / 6, (high - low) / 6};
  }

  /** What the n-th takes of the first's time. */
  static double share(double rate, double n) {
    return Math.pow(n, Math.log(rate) / Math.log(2));
  }

  private static List<Yield> threePoint(Inputs inputs) throws TradeException, QuantityException {
    Columns columns = new Columns("estimates", inputs.table("estimates"));
    double[] low = columns.numbers("low", Unit.HOUR);
    double[] likely = columns.numbers("likely", Unit.HOUR);
    double[] high = columns.numbers("high", Unit.HOUR);
    double expected = 0;
    double variance = 0;
    Unit unit = columns.unit("likely");
    Terms means = new Terms();
    Terms squares = new Terms("√(");
    for (int i = 0; i < low.length; i++) {
      if (low[i] < 0 || low[i] > likely[i] || likely[i] > high[i]) {
        throw columns.at(
            i, "These estimates do not rise.", "Give low, likely and high in this order.");
      }
      double[] one = estimate(low[i], likely[i], high[i]);
      expected += one[0];
      variance += one[1] * one[1];
      Quantity least = Si.show(low[i], Unit.HOUR, unit);
      Quantity most = Si.show(high[i], Unit.HOUR, unit);
      Quantity middle = Si.show(likely[i], Unit.HOUR, unit);
      means.add("(", least, " + 4 × ", middle, " + ", most, ") ÷ 6");
      squares.add("((", most, " − ", least, ") ÷ 6)²");
    }
    return new YieldList()
        .add(
            "expected",
            Message.of("effort.expected"),
            Si.show(expected, Unit.HOUR, unit),
            Message.of("effort.expected.how"),
            means.end())
        .add(
            "spread",
            Message.of("effort.deviation"),
            Si.show(Math.sqrt(variance), Unit.HOUR, unit),
            Message.of("effort.deviation.how"),
            squares.end(")"))
        .list();
  }

  private static List<Yield> learning(Inputs inputs) throws TradeException, QuantityException {
    double first = Si.positive(inputs, "first", Unit.HOUR);
    double rate = rate("rate", inputs.quantity("rate"));
    double given = Si.positive(inputs, "number", Unit.ONE);
    int n = (int) given;
    if (n != given || n > 1_000_000) {
      throw new TradeException(
          "number",
          Sentence.of("The number is {0}.", given),
          "Give a whole number from 1 to 1000000.");
    }
    boolean wright = inputs.word("curve", "crawford").equals("wright");
    double power = share(rate, n);
    double total = 0;
    if (wright) {
      total = first * n * power;
    } else {
      for (int i = n; i >= 1; i--) {
        total += first * share(rate, i);
      }
    }
    double before = n == 1 ? 0 : first * (n - 1) * share(rate, n - 1.0);
    double unit = wright ? total - before : first * power;
    Message method = Message.of(wright ? "effort.wright" : "effort.crawford");
    Unit hours = inputs.quantity("first").unit();
    return new YieldList()
        .add(
            "exponent",
            Message.of("effort.exponent"),
            Si.number(Math.log(rate) / Math.log(2)),
            method,
            YieldList.worked("ln {0} ÷ ln 2", Si.number(rate)))
        .add(
            "last",
            Message.of("effort.last"),
            Si.show(unit, Unit.HOUR, hours),
            method,
            wright ? wrightLast(first, n, rate, hours) : last(first, n, rate, hours))
        .add(
            "total",
            Message.of("effort.total"),
            Si.show(total, Unit.HOUR, hours),
            method,
            wright
                ? YieldList.worked(
                    "n a nᵇ = {0} × {1} × {0}^({2})",
                    Si.number(n),
                    Si.show(first, Unit.HOUR, hours),
                    Si.number(Math.log(rate) / Math.log(2)))
                : sum(first, n, rate, hours))
        .add(
            "average",
            Message.of("effort.average"),
            Si.show(total / n, Unit.HOUR, hours),
            method,
            YieldList.worked("{0} ÷ {1}", Si.show(total, Unit.HOUR, hours), Si.number(n)))
        .list();
  }

  private static Message last(double first, int n, double rate, Unit hours) throws TradeException {
    return YieldList.worked(
        "a nᵇ = {0} × {1}^({2})",
        Si.show(first, Unit.HOUR, hours), Si.number(n), Si.number(Math.log(rate) / Math.log(2)));
  }

  private static Message wrightLast(double first, int n, double rate, Unit hours)
      throws TradeException {
    Quantity power = Si.number(Math.log(rate) / Math.log(2));
    return YieldList.worked(
        "n a nᵇ − (n − 1) a (n − 1)ᵇ = {0} × ({1} × {1}^({2}) − {3} × {3}^({2}))",
        Si.show(first, Unit.HOUR, hours), Si.number(n), power, Si.number(n - 1));
  }

  /** All of them added up; of many, what they come to of the first's time. */
  private static Message sum(double first, int n, double rate, Unit hours) throws TradeException {
    Terms shares = new Terms("a (1 + 2ᵇ + … + nᵇ) = ", Si.show(first, Unit.HOUR, hours), " × (");
    double all = 0;
    for (int i = 1; i <= n; i++) {
      all += share(rate, i);
      if (n <= MOST_TOLD) {
        shares.add(Si.number(share(rate, i)));
      }
    }
    return (n <= MOST_TOLD ? shares : shares.add(Si.number(all))).end(")");
  }

  static double rate(String input, Quantity given) throws TradeException, QuantityException {
    double rate = given.doubleIn(Unit.ONE);
    if (rate <= 0 || rate > 1) {
      throw new TradeException(
          input,
          Sentence.of("A learning rate of {0} makes no sense.", given),
          "Give what a doubling brings the hours to, such as 90 %; 100 % is no learning.");
    }
    return rate;
  }
}
