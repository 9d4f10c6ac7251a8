package chinelog.photo;

import java.util.Arrays;

/**
 * Makes a picture smaller with a Catmull-Rom kernel stretched to the ratio, columns first.
 *
 * <p>The kernel is the cubic with a = -1/2 (Keys, "Cubic convolution interpolation for digital
 * image processing", 1981; cited from memory). Java's floating point is strict, so that every
 * machine arrives at the same bytes.
 */
final class Resampler {

  private Resampler() {}

  /** The picture at this size; the same one if it has it already. */
  static Pixels fit(Pixels source, int widthPx, int heightPx) {
    return source.widthPx() == widthPx && source.heightPx() == heightPx
        ? source
        : scale(source, widthPx, heightPx);
  }

  /** A side of the picture whose longer side becomes {@code longEdgePx}. */
  static int side(int px, int longer, int longEdgePx) {
    return (int) Math.max(1, Math.round((double) px * longEdgePx / longer));
  }

  static Pixels scale(Pixels source, int widthPx, int heightPx) {
    Taps across = Taps.of(source.widthPx(), widthPx);
    Taps down = Taps.of(source.heightPx(), heightPx);
    byte[] out = new byte[3 * widthPx * heightPx];
    float[][] ring = new float[down.count][3 * source.widthPx()];
    float[] sums = new float[3 * source.widthPx()];
    int ready = 0;
    for (int y = 0; y < heightPx; y++) {
      int first = down.first[y];
      for (; ready < first + down.count; ready++) {
        widen(source.bgr(), 3 * source.widthPx() * ready, ring[ready % ring.length]);
      }
      Arrays.fill(sums, 0.5f);
      int k = 0;
      int w = y * down.count;
      for (; k + 1 < down.count; k += 2) {
        add(
            sums,
            ring[(first + k) % ring.length],
            down.weights[w + k],
            ring[(first + k + 1) % ring.length],
            down.weights[w + k + 1]);
      }
      if (k < down.count) {
        add(sums, ring[(first + k) % ring.length], down.weights[w + k], sums, 0);
      }
      across.row(sums, out, 3 * widthPx * y);
    }
    return new Pixels(widthPx, heightPx, out);
  }

  private static void widen(byte[] bgr, int offset, float[] row) {
    for (int i = 0; i < row.length; i++) {
      row[i] = bgr[offset + i] & 0xFF;
    }
  }

  /** Simple enough a loop that the compiler does several samples at once. */
  private static void add(float[] sums, float[] a, float weightA, float[] b, float weightB) {
    for (int i = 0; i < sums.length; i++) {
      sums[i] += weightA * a[i] + weightB * b[i];
    }
  }

  /**
   * For each target sample the source samples it is made of.
   *
   * @param first source sample of each target sample; {@code count} of them lie within the source
   * @param weights {@code count} for each target sample, adding up to one
   */
  private record Taps(int count, int[] first, float[] weights) {

    static Taps of(int from, int to) {
      double ratio = (double) from / to;
      double stretch = Math.max(1, ratio);
      int count = Math.min(from, (int) Math.ceil(4 * stretch));
      int[] first = new int[to];
      float[] weights = new float[to * count];
      double[] exact = new double[count];
      for (int i = 0; i < to; i++) {
        double centre = (i + 0.5) * ratio - 0.5;
        int begin = (int) Math.floor(centre - 2 * stretch) + 1;
        begin = Math.max(0, Math.min(from - count, begin));
        first[i] = begin;
        double total = 0;
        for (int k = 0; k < count; k++) {
          exact[k] = kernel((begin + k - centre) / stretch);
          total += exact[k];
        }
        for (int k = 0; k < count; k++) {
          weights[i * count + k] = (float) (exact[k] / total);
        }
      }
      return new Taps(count, first, weights);
    }

    private static double kernel(double x) {
      double d = Math.abs(x);
      if (d < 1) {
        return (1.5 * d - 2.5) * d * d + 1;
      }
      return d < 2 ? ((-0.5 * d + 2.5) * d - 4) * d + 2 : 0;
    }

    /** A row of samples, each with 1/2 added for rounding, into bytes. */
    void row(float[] sums, byte[] out, int offset) {
      for (int x = 0, w = 0, t = offset; x < first.length; x++, t += 3) {
        float b = 0;
        float g = 0;
        float r = 0;
        for (int k = 0, at = 3 * first[x]; k < count; k++, at += 3, w++) {
          float weight = weights[w];
          b += weight * sums[at];
          g += weight * sums[at + 1];
          r += weight * sums[at + 2];
        }
        out[t] = clamp(b);
        out[t + 1] = clamp(g);
        out[t + 2] = clamp(r);
      }
    }

    private static byte clamp(float v) {
      return (byte) Math.max(0, Math.min(255, (int) v));
    }
  }
}
