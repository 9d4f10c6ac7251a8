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

  private static final int TOGETHER = 4;

  private Resampler() {}

  /** A side of the picture whose longer side becomes {@code longEdgePx}. */
  static int side(int px, int longer, int longEdgePx) {
    return (int) Math.max(1, Math.round((double) px * longEdgePx / longer));
  }

  static Samples scale(Samples source, int widthPx, int heightPx) {
    return scale(
        source,
        widthPx,
        heightPx,
        (double) source.widthPx() / widthPx,
        (double) source.heightPx() / heightPx);
  }

  /**
   * @param across how many samples of the source one of the target is wide; differs from the ratio
   *     of the widths where the last sample is only partly of the picture
   * @param down how many it is high
   */
  static Samples scale(Samples source, int widthPx, int heightPx, double across, double down) {
    Taps columns = Taps.of(source.widthPx(), widthPx, across);
    Taps rows = Taps.of(source.heightPx(), heightPx, down);
    int channels = source.channels();
    int length = channels * source.widthPx();
    byte[] out = new byte[channels * widthPx * heightPx];
    float[][] ring = new float[rows.count][length];
    float[][] sums = new float[TOGETHER][length];
    int ready = 0;
    for (int y = 0; y < heightPx; y++) {
      int first = rows.first[y];
      for (; ready < first + rows.count; ready++) {
        widen(source.bytes(), length * ready, ring[ready % ring.length]);
      }
      float[] row = sums[y % TOGETHER];
      rows.down(ring, y, row);
      if (channels > 1) {
        columns.colours(row, out, channels * widthPx * y);
      } else if (y % TOGETHER == TOGETHER - 1) {
        columns.plane(sums, out, widthPx * (y + 1 - TOGETHER), widthPx);
      } else if (y >= heightPx / TOGETHER * TOGETHER) {
        // Too few are left: this row four times over.
        columns.plane(new float[][] {row, row, row, row}, out, widthPx * y, 0);
      }
    }
    return new Samples(widthPx, heightPx, channels, out);
  }

  private static void widen(byte[] samples, int offset, float[] row) {
    for (int i = 0; i < row.length; i++) {
      row[i] = samples[offset + i] & 0xFF;
    }
  }

  /**
   * For each target sample the source samples it is made of.
   *
   * @param first source sample of each target sample; {@code count} of them lie within the source
   * @param weights {@code count} for each target sample, adding up to one
   */
  private record Taps(int count, int[] first, float[] weights) {

    static Taps of(int from, int to, double ratio) {
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

    /** One row made of several, each sample with 1/2 added for rounding. */
    void down(float[][] ring, int y, float[] sums) {
      Arrays.fill(sums, 0.5f);
      int w = y * count;
      int k = first[y];
      int end = k + count;
      for (; k + 3 < end; k += 4, w += 4) {
        add(
            sums,
            ring[k % count],
            weights[w],
            ring[(k + 1) % count],
            weights[w + 1],
            ring[(k + 2) % count],
            weights[w + 2],
            ring[(k + 3) % count],
            weights[w + 3]);
      }
      for (; k < end; k++, w++) {
        add(sums, ring[k % count], weights[w]);
      }
    }

    private static void add(float[] sums, float[] a, float weight) {
      for (int i = 0; i < sums.length; i++) {
        sums[i] += weight * a[i];
      }
    }

    /** Simple enough a loop that the compiler does several samples at once. */
    private static void add(
        float[] sums,
        float[] a,
        float weightA,
        float[] b,
        float weightB,
        float[] c,
        float weightC,
        float[] d,
        float weightD) {
      for (int i = 0; i < sums.length; i++) {
        sums[i] += weightA * a[i] + weightB * b[i] + (weightC * c[i] + weightD * d[i]);
      }
    }

    /** A row of blue, green and red into bytes. */
    void colours(float[] sums, byte[] out, int offset) {
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

    /** Four rows of a plane into bytes; together, as one by itself leaves much of a core idle. */
    void plane(float[][] sums, byte[] out, int offset, int step) {
      float[] rowA = sums[0];
      float[] rowB = sums[1];
      float[] rowC = sums[2];
      float[] rowD = sums[3];
      for (int x = 0, w = 0, t = offset; x < first.length; x++, t++) {
        float a = 0;
        float b = 0;
        float c = 0;
        float d = 0;
        for (int k = 0, at = first[x]; k < count; k++, at++, w++) {
          float weight = weights[w];
          a += weight * rowA[at];
          b += weight * rowB[at];
          c += weight * rowC[at];
          d += weight * rowD[at];
        }
        out[t] = clamp(a);
        out[t + step] = clamp(b);
        out[t + 2 * step] = clamp(c);
        out[t + 3 * step] = clamp(d);
      }
    }

    private static byte clamp(float v) {
      return (byte) Math.max(0, Math.min(255, (int) v));
    }
  }
}
