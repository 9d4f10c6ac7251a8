package chinelog.withhold.derive;

import chinelog.reckon.formula.Expression;

/**
 * A quantity equal to a formula over others.
 *
 * @param target index of the quantity on the left
 * @param members indexes of all quantities in it, the target first, without repeats
 * @param written the formula as the log has it, for the maker
 */
record Equation(int target, RangedFormula formula, int[] members, Expression written) {

  /** How far the equation is from holding, as a part of its larger side. */
  double error(double[] x) {
    double left = x[target];
    double right = formula.value(x);
    double size = Math.max(Math.abs(left), Math.abs(right));
    return size == 0 ? 0 : Math.abs(left - right) / size;
  }

  /** Adds the derivatives of right side less left side. */
  void slopes(double[] x, boolean smooth, double[] slopes) {
    formula.slopes(x, 1, smooth, slopes);
    slopes[target] -= 1;
  }
}
