package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.List;

/**
 * Speed from runs there and back over a course, with the current taken out: {@code runs}.
 *
 * <p>Speeds are averaged, never times: of two runs the mean; of more, taken by turns there and
 * back, the mean of means, whose weights are the binomial coefficients, so that a current that
 * changes evenly, or as the square of time, falls out (Tupper, Introduction to Naval Architecture,
 * p. 245, for four runs); exact for such a current.
 */
final class Runs {

  private static final int MOST = 30;

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "runs",
              "Speed from runs there and back",
              List.of(
                  Parameter.table("runs", "in order, there and back by turns", "run?", "time"),
                  Parameter.quantity("course", "its length", Unit.METRE)),
              Runs::of)
          .yielding(
              "speed", "runs.speed",
              "current", "runs.current",
              "speed_…", "runs.run");

  private Runs() {}

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    double course = Si.positive(inputs, "course", Unit.METRE);
    Columns columns = new Columns("runs", inputs.table("runs"));
    columns.requireDistinct("run");
    double[] time = columns.numbers("time", Si.unit("s"));
    if (time.length < 2 || time.length > MOST) {
      throw columns.at(
          0,
          Sentence.of("Here stand {0} runs.", time.length),
          Sentence.of("Give from 2 to {0}, by turns.", MOST));
    }
    Unit unit = Si.unit("m/s");
    YieldList yields = new YieldList().from("runs", "course");
    double[] speed = new double[time.length];
    Quantity length = Si.show(course, Unit.METRE, inputs.quantity("course").unit());
    for (int i = 0; i < time.length; i++) {
      if (time[i] <= 0) {
        throw columns.at(i, "A run took no time.", "Give its time.");
      }
      speed[i] = course / time[i];
      yields.add(
          "speed_" + Offsets.factPart(columns.text(i, "run")),
          Message.of("runs.run", columns.text(i, "run")),
          Si.show(speed[i], unit, unit),
          YieldList.worked("{0} ÷ {1}", length, Si.show(time[i], Si.unit("s"), Si.unit("s"))));
    }
    double[] weight = weights(time.length);
    double through = 0;
    double drift = 0;
    Terms sum = new Terms("(");
    Terms turned = new Terms("(");
    double all = 0;
    for (int i = 0; i < speed.length; i++) {
      through += weight[i] * speed[i];
      drift += (i % 2 == 0 ? 1 : -1) * weight[i] * speed[i];
      all += weight[i];
      Quantity run = Si.show(speed[i], unit, unit);
      sum.add(Si.number(weight[i]), " × ", run);
      turned.add(Si.number((i % 2 == 0 ? 1 : -1) * weight[i]), " × ", run);
    }
    yields.add(
        "speed", "runs.speed", Si.show(through / all, unit, unit), sum.end(") ÷ ", Si.number(all)));
    yields.add(
        "current",
        "runs.current",
        Si.show(drift / all, unit, unit),
        turned.end(") ÷ ", Si.number(all)));
    return yields.list();
  }

  private static double[] weights(int n) {
    double[] weight = new double[n];
    weight[0] = 1;
    for (int i = 1; i < n; i++) {
      weight[i] = weight[i - 1] * (n - i) / i;
    }
    return weight;
  }
}
