package chinelog.withhold.derive;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Looks for other values in which what some quantities gain others lose, so that every printed sum
 * stays: a walk along the projection of one quantity's slope on what the printed figures leave free
 * of the quantities that rest on no other. One reckoning backwards gives all slopes, so that each
 * quantity of a long chain of sums costs no more than reckoning the chain a few times.
 */
final class Compensation {

  private static final int MOST_CORRECTIONS = 16;

  /** More printed figures than this are left to {@link Witness}, which is sparse in them. */
  private static final int MOST_HELD = 200;

  /** Steps are tried so many times as long as is asked for, since they move others too. */
  private static final double FAR = 8;

  /** Less than this is no movement but the noise of computing. */
  private static final double FLAT = 1e-9;

  private static final double HOLDS = 1e-12;

  private final Model model;
  private final Forward forward;
  private final Interval[] domains;
  private final int[] grounds;
  private final double[] size;

  /** Printed quantities that are reckoned, and equations for what another one reckons. */
  private final List<Equation> held;

  /** How each held equation's error changes with the grounds, at the true values. */
  private final SparseMatrix rows;

  private final double[] lengths;
  private final double[][] inverse;

  /**
   * @param domains narrowed ranges of all quantities
   */
  Compensation(Model model, Model.Component component, Interval[] domains, Forward forward) {
    this.model = model;
    this.forward = forward;
    this.domains = domains;
    this.grounds = forward.grounds(component.unknown());
    this.size = new double[grounds.length];
    double most = 0;
    for (int k = 0; k < size.length; k++) {
      size[k] = Math.abs(model.values()[grounds[k]]);
      most = Math.max(most, size[k]);
    }
    for (int k = 0; k < size.length; k++) {
      size[k] = size[k] > 0 ? size[k] : most > 0 ? most : 1;
    }
    this.held = new ArrayList<>();
    for (Equation equation : component.equations()) {
      if (model.printed().get(equation.target()) || !forward.isDefining(equation)) {
        held.add(equation);
      }
    }
    boolean few = held.size() <= MOST_HELD;
    this.lengths = new double[few ? held.size() : 0];
    this.rows = new SparseMatrix(lengths.length, grounds.length);
    for (int e = 0; e < lengths.length; e++) {
      double[] entries = slopes(held.get(e));
      int[] columns = IntStream.range(0, entries.length).filter(k -> entries[k] != 0).toArray();
      lengths[e] =
          rows.set(e, columns, Arrays.stream(columns).mapToDouble(k -> entries[k]).toArray());
    }
    this.inverse = rows.inverse();
  }

  /**
   * Tells {@code found} values that print the same and in which {@code quantity} lies about {@code
   * reach} higher or lower; to either side where one does not reach so far.
   */
  void search(int quantity, double reach, Consumer<double[]> found) {
    if (held.size() > MOST_HELD || grounds.length == 0) {
      return;
    }
    double[] slopes = new double[model.values().length];
    slopes[quantity] = 1;
    double[] own = byGrounds(slopes);
    double[] back = away(rows.times(own));
    double[] direction = new double[grounds.length];
    double slope = 0;
    double most = 0;
    for (int k = 0; k < direction.length; k++) {
      direction[k] = own[k] - back[k];
      slope += own[k] * direction[k];
      most = Math.max(most, Math.abs(own[k]));
    }
    if (slope <= FLAT * most * most) {
      return;
    }
    for (int sign : new int[] {1, -1}) {
      double length = Math.min(FAR * reach / slope, room(direction, sign));
      for (double part = 1; part > 0.02; part /= 2) {
        double[] x = stepped(direction, sign * part * length);
        if (x != null) {
          found.accept(x);
          if (part * length * slope >= reach) {
            return;
          }
          break;
        }
      }
    }
  }

  private double room(double[] direction, int sign) {
    double room = Double.POSITIVE_INFINITY;
    for (int k = 0; k < direction.length; k++) {
      double move = sign * direction[k] * size[k];
      Interval range = domains[grounds[k]];
      double value = model.values()[grounds[k]];
      if (Math.abs(move) > FLAT * size[k]) {
        double left = move > 0 ? range.high() - value : value - range.low();
        room = Math.min(room, 0.999 * Math.max(0, left) / Math.abs(move));
      }
    }
    return room;
  }

  private double @Nullable [] stepped(double[] direction, double length) {
    double[] x = model.values().clone();
    move(x, direction, length);
    for (int i = 0; i < MOST_CORRECTIONS; i++) {
      forward.reckon(x);
      double[] errors = errors(x);
      if (errors == null) {
        return null;
      }
      if (holds(errors, x)) {
        held.forEach(e -> settle(e.target(), x));
        return forward.isAllowed(x) ? x : null;
      }
      for (int e = 0; e < errors.length; e++) {
        errors[e] /= lengths[e];
      }
      move(x, away(errors), 1);
    }
    return null;
  }

  private void move(double[] x, double[] direction, double length) {
    for (int k = 0; k < direction.length; k++) {
      Interval range = domains[grounds[k]];
      double to = x[grounds[k]] + length * direction[k] * size[k];
      x[grounds[k]] = Math.max(range.low(), Math.min(range.high(), to));
    }
  }

  /** A printed figure that came out but for the last places is what was printed. */
  private void settle(int quantity, double[] x) {
    if (model.printed().get(quantity)) {
      x[quantity] = model.values()[quantity];
    }
  }

  private boolean holds(double[] errors, double[] x) {
    for (int e = 0; e < errors.length; e++) {
      if (Math.abs(errors[e]) > HOLDS * Math.max(1e-300, Math.abs(x[held.get(e).target()]))) {
        return false;
      }
    }
    return true;
  }

  /** By how much each held equation misses what it must give; null if one cannot be reckoned. */
  private double @Nullable [] errors(double[] x) {
    double[] errors = new double[held.size()];
    for (int e = 0; e < errors.length; e++) {
      Equation equation = held.get(e);
      int target = equation.target();
      double wanted = model.printed().get(target) ? model.values()[target] : x[target];
      errors[e] = wanted - equation.formula().value(x);
      if (!Double.isFinite(errors[e])) {
        return null;
      }
    }
    return errors;
  }

  /** The least move of the grounds that changes the held equations so much. */
  private double[] away(double[] errors) {
    double[] weights = new double[errors.length];
    for (int i = 0; i < weights.length; i++) {
      for (int k = 0; k < weights.length; k++) {
        weights[i] += inverse[i][k] * errors[k];
      }
    }
    return rows.transposedTimes(weights);
  }

  private double[] slopes(Equation equation) {
    double[] slopes = new double[model.values().length];
    equation.formula().slopes(model.values(), 1, false, slopes);
    if (!model.printed().get(equation.target())) {
      slopes[equation.target()] -= 1;
    }
    return byGrounds(slopes);
  }

  /** What slopes come to by the grounds, each in units of its size. */
  private double[] byGrounds(double[] slopes) {
    forward.slopesBack(model.values(), slopes);
    double[] own = new double[grounds.length];
    for (int k = 0; k < own.length; k++) {
      own[k] = slopes[grounds[k]] * size[k];
    }
    return own;
  }
}
