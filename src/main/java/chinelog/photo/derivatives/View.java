package chinelog.photo.derivatives;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A picture scaled down to a small grey square, for comparing it with others.
 *
 * <p>Two views are compared by the correlation of their samples, which heeds neither brightness nor
 * contrast; a crop is found by laying the one upon parts of the other.
 */
public final class View {

  static final int SIDE = 64;

  private static final int COARSE = 8;
  private static final int FINE = 24;

  /** Whoever falls short of this at a coarse look is not looked at closely. */
  private static final double WORTH_A_LOOK = 0.8;

  /** How much of a side a crop may have lost. */
  private static final double[] LOST = {0.03, 0.06, 0.09};

  private static final List<double[]> WINDOWS = windows();

  private final byte[] luma;
  private volatile @Nullable Grids grids;

  /**
   * What comparing takes, worked out when two are first compared.
   *
   * @param sums of all samples above and to the left
   * @param coarse a coarse look at each window
   */
  private record Grids(int[] sums, List<float[]> coarse) {}

  /**
   * @param luma 64 rows of 64
   */
  View(byte[] luma) {
    if (luma.length != SIDE * SIDE) {
      throw new IllegalArgumentException(luma.length + " samples");
    }
    this.luma = luma;
  }

  private Grids grids() {
    Grids known = grids;
    if (known == null) {
      int[] sums = sums(luma);
      known = new Grids(sums, WINDOWS.stream().map(w -> samples(sums, w, COARSE)).toList());
      grids = known;
    }
    return known;
  }

  byte[] luma() {
    return luma;
  }

  /** How alike two views are: 1 for the same, 0 for strangers, and less for opposites. */
  public double likeness(View other) {
    double most = -1;
    for (int i = 0; i < WINDOWS.size(); i++) {
      most = Math.max(most, closer(other, i, 0));
      most = Math.max(most, closer(other, 0, i));
    }
    return most;
  }

  /** Whether {@link #likeness} is at least so much. */
  public boolean isAlike(View other, double least) {
    for (int i = 0; i < WINDOWS.size(); i++) {
      if (closer(other, i, 0) >= least || closer(other, 0, i) >= least) {
        return true;
      }
    }
    return least <= -1;
  }

  /** As {@link #likeness}, but without looking for crops. */
  public double likenessOfWholes(View other) {
    return closer(other, 0, 0);
  }

  private double closer(View other, int mine, int others) {
    Grids own = grids();
    Grids theirs = other.grids();
    double rough = correlation(own.coarse.get(mine), theirs.coarse.get(others));
    return rough < WORTH_A_LOOK
        ? Math.min(rough, WORTH_A_LOOK)
        : correlation(
            samples(own.sums, WINDOWS.get(mine), FINE),
            samples(theirs.sums, WINDOWS.get(others), FINE));
  }

  /** The same picture turned a quarter to the right. */
  public View turned() {
    byte[] turned = new byte[SIDE * SIDE];
    for (int y = 0; y < SIDE; y++) {
      for (int x = 0; x < SIDE; x++) {
        turned[y * SIDE + x] = luma[(SIDE - 1 - x) * SIDE + y];
      }
    }
    return new View(turned);
  }

  /** The whole, and parts of it as a crop would leave them: left, top and side as fractions. */
  private static List<double[]> windows() {
    List<double[]> windows = new ArrayList<>();
    windows.add(new double[] {0, 0, 1});
    for (double lost : LOST) {
      for (int i = 0; i < 9; i++) {
        windows.add(new double[] {i % 3 * lost / 2, i / 3 * lost / 2, 1 - lost});
      }
    }
    return windows;
  }

  /** Means over a grid of {@code n} by {@code n} cells, with mean 0 and length 1 as a whole. */
  private static float[] samples(int[] sums, double[] window, int n) {
    float[] samples = new float[n * n];
    double cell = window[2] * SIDE / n;
    double total = 0;
    for (int y = 0; y < n; y++) {
      double top = window[1] * SIDE + y * cell;
      for (int x = 0; x < n; x++) {
        double left = window[0] * SIDE + x * cell;
        double mean =
            sum(sums, left + cell, top + cell)
                - sum(sums, left, top + cell)
                - sum(sums, left + cell, top)
                + sum(sums, left, top);
        samples[y * n + x] = (float) mean;
        total += mean;
      }
    }
    double squares = 0;
    for (int i = 0; i < samples.length; i++) {
      samples[i] -= (float) (total / samples.length);
      squares += samples[i] * samples[i];
    }
    float length = (float) Math.max(1e-6, Math.sqrt(squares));
    for (int i = 0; i < samples.length; i++) {
      samples[i] /= length;
    }
    return samples;
  }

  private static double correlation(float[] a, float[] b) {
    float sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  /** The sum of all samples above and to the left, between the samples' edges by blending. */
  private static double sum(int[] sums, double x, double y) {
    int left = Math.min(SIDE - 1, (int) x);
    int top = Math.min(SIDE - 1, (int) y);
    double right = x - left;
    double down = y - top;
    int at = top * (SIDE + 1) + left;
    return (1 - down) * ((1 - right) * sums[at] + right * sums[at + 1])
        + down * ((1 - right) * sums[at + SIDE + 1] + right * sums[at + SIDE + 2]);
  }

  private static int[] sums(byte[] luma) {
    int[] sums = new int[(SIDE + 1) * (SIDE + 1)];
    for (int y = 0; y < SIDE; y++) {
      int row = 0;
      for (int x = 0; x < SIDE; x++) {
        row += luma[y * SIDE + x] & 0xFF;
        sums[(y + 1) * (SIDE + 1) + x + 1] = sums[y * (SIDE + 1) + x + 1] + row;
      }
    }
    return sums;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof View view && Arrays.equals(luma, view.luma);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(luma);
  }
}
