package chinelog.withhold.derive;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Looks for other values that every printed figure and every equation would allow: a proof that the
 * reader cannot know.
 *
 * <p>From the true values it walks along the projection of one quantity's axis on what the
 * equations leave free, and along the bounds where it meets them (Rosen's gradient projection),
 * setting the equations right by Newton's method after each step.
 */
final class Witness {

  private static final int MOST_STEPS = 60;
  private static final int MOST_CORRECTIONS = 12;
  private static final double HOLDS = 1e-10;

  /** Less than this is no movement but the noise of computing. */
  private static final double FLAT = 1e-9;

  private final Model model;
  private final Interval[] bounds;
  private final int[] free;
  private final double[] size;
  private final List<Equation> equations;
  private final int[][] columnsOf;

  /** Derivatives of one equation by all quantities; all nothing between uses. */
  private final double[] slopes;

  /**
   * @param domains narrowed ranges of all quantities
   */
  Witness(Model model, Model.Component component, Interval[] domains) {
    this.model = model;
    this.equations = component.equations();
    this.bounds = domains;
    this.free = freeOnes(model, component);
    this.size = new double[free.length];
    this.slopes = new double[domains.length];
    this.columnsOf = new int[equations.size()][];
    for (int e = 0; e < columnsOf.length; e++) {
      columnsOf[e] =
          Arrays.stream(equations.get(e).members())
              .map(member -> Arrays.binarySearch(free, member))
              .filter(column -> column >= 0)
              .toArray();
    }
    double most = Arrays.stream(free).mapToDouble(i -> Math.abs(model.values()[i])).max().orElse(1);
    for (int k = 0; k < free.length; k++) {
      Interval range = domains[free[k]];
      double value = Math.abs(model.values()[free[k]]);
      double whole = value == 0 ? (most == 0 ? 1 : most) : value;
      size[k] = Math.min(whole, Math.max(range.width() / 2, 1e-15 * whole));
    }
  }

  /** Unknown quantities, and printed ones that appear in no other equation, within rounding. */
  private static int[] freeOnes(Model model, Model.Component component) {
    BitSet free = (BitSet) component.unknown().clone();
    for (Equation equation : component.equations()) {
      for (int member : equation.members()) {
        if (model.printed().get(member)
            && component.equations().containsAll(model.equationsOf().get(member))) {
          free.set(member);
        }
      }
    }
    return free.stream().toArray();
  }

  /** Values that print the same with {@code quantity} at {@code goal}; null if none was found. */
  double @Nullable [] find(int quantity, double goal) {
    double[] x = model.values().clone();
    if (!bounds[quantity].contains(goal)) {
      return null;
    }
    int own = Arrays.binarySearch(free, quantity);
    for (int step = 0; step < MOST_STEPS; step++) {
      double left = goal - x[quantity];
      if (Math.abs(left) <= 1e-12 * Math.abs(goal)) {
        return holds(x) ? x : null;
      }
      double[] direction = direction(x, own, Math.signum(left));
      if (direction == null) {
        return null;
      }
      double length = left / (direction[own] * size[own]);
      for (int k = 0; k < free.length; k++) {
        Interval range = bounds[free[k]];
        double move = direction[k] * size[k];
        double room = move > 0 ? range.high() - x[free[k]] : x[free[k]] - range.low();
        if (Math.abs(move) > FLAT * size[k]) {
          length = Math.min(length, Math.max(0, room) / Math.abs(move));
        }
      }
      double[] next = stepped(x, direction, length, own);
      if (next == null || next[quantity] == x[quantity]) {
        return null;
      }
      x = next;
    }
    return null;
  }

  /** The point reached, put back on the equations; shorter steps are tried where that fails. */
  private double @Nullable [] stepped(double[] x, double[] direction, double length, int own) {
    for (double part = 1; part > 1e-3; part /= 2) {
      double[] next = x.clone();
      for (int k = 0; k < free.length; k++) {
        next[free[k]] = clip(free[k], x[free[k]] + part * length * direction[k] * size[k]);
      }
      if (correct(next, own)) {
        return next;
      }
    }
    return null;
  }

  private double clip(int i, double value) {
    return Math.max(bounds[i].low(), Math.min(bounds[i].high(), value));
  }

  /**
   * @param own what must stay where it is; -1 for nothing
   */
  private boolean correct(double[] x, int own) {
    for (int i = 0; i < MOST_CORRECTIONS; i++) {
      if (holds(x)) {
        return true;
      }
      boolean[] fixed = new boolean[free.length];
      if (own >= 0) {
        fixed[own] = true;
      }
      double[] errors = new double[equations.size()];
      SparseMatrix rows = slopes(x, fixed, errors);
      double[] change = rows.transposedTimes(rows.solve(errors));
      for (int k = 0; k < free.length; k++) {
        x[free[k]] = clip(free[k], x[free[k]] + change[k] * size[k]);
      }
    }
    return holds(x);
  }

  private boolean holds(double[] x) {
    return equations.stream().allMatch(e -> e.error(x) <= HOLDS);
  }

  /** Where to go so that {@code own} changes most; null if the equations or bounds forbid it. */
  private double @Nullable [] direction(double[] x, int own, double sign) {
    boolean[] fixed = new boolean[free.length];
    for (int attempt = 0; attempt <= free.length; attempt++) {
      SparseMatrix rows = slopes(x, fixed, new double[equations.size()]);
      double[] direction = new double[free.length];
      direction[own] = sign;
      double[] back = rows.transposedTimes(rows.solve(rows.times(direction)));
      boolean blocked = false;
      for (int k = 0; k < free.length; k++) {
        direction[k] = fixed[k] ? 0 : direction[k] - back[k];
        double room =
            direction[k] > 0
                ? bounds[free[k]].high() - x[free[k]]
                : x[free[k]] - bounds[free[k]].low();
        if (Math.abs(direction[k]) > FLAT && room <= 1e-13 * size[k]) {
          fixed[k] = true;
          blocked = true;
        }
      }
      if (direction[own] * sign < FLAT || fixed[own]) {
        return null;
      }
      if (!blocked) {
        return direction;
      }
    }
    return null;
  }

  /**
   * Each equation's derivatives by what may move, in units of {@link #size}.
   *
   * @param errors filled with how far each equation is from holding, in the same measure
   */
  private SparseMatrix slopes(double[] x, boolean[] fixed, double[] errors) {
    SparseMatrix rows = new SparseMatrix(equations.size(), free.length);
    for (int e = 0; e < errors.length; e++) {
      Equation equation = equations.get(e);
      equation.slopes(x, false, slopes);
      int[] columns = columnsOf[e];
      double[] entries = new double[columns.length];
      for (int k = 0; k < columns.length; k++) {
        int column = columns[k];
        entries[k] = fixed[column] ? 0 : slopes[free[column]] * size[column];
      }
      for (int member : equation.members()) {
        slopes[member] = 0;
      }
      double length = rows.set(e, columns, entries);
      errors[e] = (x[equation.target()] - equation.formula().value(x)) / length;
    }
    return rows;
  }

  /** Values near {@code factor} times the true ones, all at once; null if none were found. */
  double @Nullable [] findScaled(double factor) {
    double[] x = model.values().clone();
    for (int i : free) {
      x[i] = clip(i, x[i] * factor);
    }
    return correct(x, -1) ? x : null;
  }
}
