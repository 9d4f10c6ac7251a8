package chinelog.withhold.derive;

import java.util.BitSet;
import java.util.List;
import java.util.Random;

/**
 * Finds which quantities a set of equations fixes if every printed figure is taken as exact: those
 * whose unit vector lies in the row space of the equations' derivatives.
 */
final class Identification {

  private static final double NOTHING = 1e-9;

  private Identification() {}

  /** The quantities of a component that are fixed, at the true values or near by. */
  static BitSet fixed(Model model, Model.Component component) {
    BitSet fixed = new BitSet();
    // Rank is the same almost everywhere, but may drop at a special point: two more are tried.
    Random random = new Random(1);
    for (int attempt = 0; attempt < 3; attempt++) {
      double[] x = model.values().clone();
      int at = attempt;
      component.unknown().stream()
          .forEach(i -> x[i] *= at == 0 ? 1 : 1 + 0.02 * (random.nextDouble() - 0.5));
      fixed.or(fixedAt(model, component, x));
    }
    return fixed;
  }

  private static BitSet fixedAt(Model model, Model.Component component, double[] x) {
    int[] unknown = component.unknown().stream().toArray();
    List<Equation> equations = component.equations();
    double[][] rows = new double[equations.size()][unknown.length];
    double[] slopes = new double[x.length];
    for (int e = 0; e < rows.length; e++) {
      Equation equation = equations.get(e);
      equation.slopes(x, true, slopes);
      double most = 0;
      for (int u = 0; u < unknown.length; u++) {
        double size = Math.abs(model.values()[unknown[u]]);
        rows[e][u] = slopes[unknown[u]] * (size == 0 ? 1 : size);
        most = Math.max(most, Math.abs(rows[e][u]));
      }
      for (int u = 0; u < unknown.length && most > 0; u++) {
        rows[e][u] /= most;
      }
      for (int member : equation.members()) {
        slopes[member] = 0;
      }
    }
    BitSet fixed = new BitSet();
    for (int row : reduce(rows)) {
      int only = -1;
      int others = 0;
      for (int u = 0; u < unknown.length; u++) {
        if (Math.abs(rows[row][u]) > NOTHING) {
          only = u;
          others++;
        }
      }
      if (others == 1) {
        fixed.set(unknown[only]);
      }
    }
    return fixed;
  }

  /** Gauss and Jordan's elimination in place; the rows that hold a pivot. */
  private static int[] reduce(double[][] rows) {
    int rank = 0;
    int columns = rows.length == 0 ? 0 : rows[0].length;
    for (int c = 0; c < columns && rank < rows.length; c++) {
      int pivot = rank;
      for (int r = rank; r < rows.length; r++) {
        if (Math.abs(rows[r][c]) > Math.abs(rows[pivot][c])) {
          pivot = r;
        }
      }
      if (Math.abs(rows[pivot][c]) <= NOTHING) {
        continue;
      }
      double[] row = rows[pivot];
      rows[pivot] = rows[rank];
      rows[rank] = row;
      double head = row[c];
      for (int k = 0; k < columns; k++) {
        row[k] /= head;
      }
      for (int r = 0; r < rows.length; r++) {
        double factor = rows[r][c];
        if (r != rank && factor != 0) {
          for (int k = 0; k < columns; k++) {
            rows[r][k] -= factor * row[k];
          }
        }
      }
      rank++;
    }
    return java.util.stream.IntStream.range(0, rank).toArray();
  }
}
