package chinelog.withhold.derive;

import java.util.Arrays;

/**
 * A matrix with few entries in each row: one row for an equation, one column for a quantity that
 * may move.
 */
final class SparseMatrix {

  /** Fewer rows than this are solved by elimination, more by conjugate gradients. */
  private static final int FEW = 48;

  private static final double NOTHING = 1e-12;

  private final int width;
  private final int[][] columns;
  private final double[][] entries;

  SparseMatrix(int height, int width) {
    this.width = width;
    this.columns = new int[height][];
    this.entries = new double[height][];
  }

  /** Sets a row, brought to length 1; the length it had, or 1 if it is nothing. */
  double set(int row, int[] where, double[] what) {
    double length = 0;
    for (double v : what) {
      length += v * v;
    }
    length = length == 0 ? 1 : Math.sqrt(length);
    for (int k = 0; k < what.length; k++) {
      what[k] /= length;
    }
    columns[row] = where;
    entries[row] = what;
    return length;
  }

  int height() {
    return columns.length;
  }

  double[] times(double[] vector) {
    double[] result = new double[height()];
    for (int r = 0; r < result.length; r++) {
      for (int k = 0; k < columns[r].length; k++) {
        result[r] += entries[r][k] * vector[columns[r][k]];
      }
    }
    return result;
  }

  double[] transposedTimes(double[] weights) {
    double[] result = new double[width];
    for (int r = 0; r < weights.length; r++) {
      for (int k = 0; k < columns[r].length; k++) {
        result[columns[r][k]] += entries[r][k] * weights[r];
      }
    }
    return result;
  }

  /** Weights {@code w} with {@code A·Aᵀ·w = b}; the rows need not be independent. */
  double[] solve(double[] b) {
    return height() <= FEW ? eliminated(b) : descended(b);
  }

  private double[] eliminated(double[] b) {
    double[][] right = new double[b.length][];
    Arrays.setAll(right, i -> new double[] {b[i]});
    return Arrays.stream(eliminated(right)).mapToDouble(row -> row[0]).toArray();
  }

  /** Rows by which {@link #solve} comes down to a product, for many {@code b} of one matrix. */
  double[][] inverse() {
    double[][] unit = new double[height()][height()];
    for (int i = 0; i < unit.length; i++) {
      unit[i][i] = 1;
    }
    return eliminated(unit);
  }

  private double[][] eliminated(double[][] right) {
    int n = height();
    int width = n + (n == 0 ? 0 : right[0].length);
    double[][] a = square();
    for (int i = 0; i < n; i++) {
      a[i] = Arrays.copyOf(a[i], width);
      System.arraycopy(right[i], 0, a[i], n, width - n);
    }
    boolean[] used = new boolean[n];
    for (int c = 0; c < n; c++) {
      // The matrix is symmetric and not negative: the largest diagonal left is the safest pivot.
      int best = -1;
      for (int i = 0; i < n; i++) {
        if (!used[i] && (best < 0 || a[i][i] > a[best][best])) {
          best = i;
        }
      }
      if (a[best][best] <= NOTHING) {
        break;
      }
      used[best] = true;
      for (int i = 0; i < n; i++) {
        double factor = a[i][best] / a[best][best];
        if (i != best && factor != 0) {
          for (int k = 0; k < width; k++) {
            a[i][k] -= factor * a[best][k];
          }
        }
      }
    }
    double[][] w = new double[n][width - n];
    for (int i = 0; i < n; i++) {
      for (int k = n; k < width && used[i]; k++) {
        w[i][k - n] = a[i][k] / a[i][i];
      }
    }
    return w;
  }

  /** A·Aᵀ. */
  private double[][] square() {
    double[][] found = new double[height()][];
    double[] dense = new double[width];
    for (int i = 0; i < found.length; i++) {
      for (int k = 0; k < columns[i].length; k++) {
        dense[columns[i][k]] = entries[i][k];
      }
      found[i] = times(dense);
      for (int column : columns[i]) {
        dense[column] = 0;
      }
    }
    return found;
  }

  /** Hestenes and Stiefel's method of conjugate gradients. */
  private double[] descended(double[] b) {
    double[] w = new double[b.length];
    double[] rest = b.clone();
    double[] way = b.clone();
    double size = dot(rest, rest);
    double enough = size * 1e-28;
    for (int i = 0; i < 2 * b.length + 20 && size > enough; i++) {
      double[] image = times(transposedTimes(way));
      double curve = dot(way, image);
      if (curve <= 0) {
        break;
      }
      double step = size / curve;
      for (int k = 0; k < w.length; k++) {
        w[k] += step * way[k];
        rest[k] -= step * image[k];
      }
      double next = dot(rest, rest);
      for (int k = 0; k < w.length; k++) {
        way[k] = rest[k] + next / size * way[k];
      }
      size = next;
    }
    return w;
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
