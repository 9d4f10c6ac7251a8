package chinelog.photo;

import chinelog.photo.pixels.Pixels;

/** A slow and careful reduction to luma, with a Lanczos kernel of three lobes in floating point. */
public final class Lanczos {

  private static final int LOBES = 3;

  private Lanczos() {}

  public static byte[] reduce(Pixels source, int widthPx, int heightPx) {
    int w = source.widthPx();
    int h = source.heightPx();
    float[] luma = new float[w * h];
    byte[] bgr = source.bgr();
    for (int i = 0; i < luma.length; i++) {
      luma[i] =
          0.114f * (bgr[3 * i] & 0xFF)
              + 0.587f * (bgr[3 * i + 1] & 0xFF)
              + 0.299f * (bgr[3 * i + 2] & 0xFF);
    }
    float[] narrow = turned(luma, w, h, widthPx);
    float[] small = turned(narrow, h, widthPx, heightPx);
    byte[] out = new byte[small.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = (byte) Math.max(0, Math.min(255, Math.round(small[i])));
    }
    return out;
  }

  /** Reduces the width and swaps rows with columns. */
  private static float[] turned(float[] in, int w, int h, int to) {
    float[] out = new float[to * h];
    double ratio = Math.max(1, (double) w / to);
    for (int x = 0; x < to; x++) {
      double centre = (x + 0.5) * w / to - 0.5;
      int from = (int) Math.max(0, Math.ceil(centre - LOBES * ratio));
      int end = (int) Math.min(w - 1, Math.floor(centre + LOBES * ratio));
      double[] weights = new double[end - from + 1];
      double total = 0;
      for (int k = 0; k < weights.length; k++) {
        weights[k] = kernel((from + k - centre) / ratio);
        total += weights[k];
      }
      for (int y = 0; y < h; y++) {
        double sum = 0;
        for (int k = 0; k < weights.length; k++) {
          sum += weights[k] * in[y * w + from + k];
        }
        out[x * h + y] = (float) (sum / total);
      }
    }
    return out;
  }

  private static double kernel(double x) {
    double p = Math.PI * x;
    return x == 0
        ? 1
        : Math.abs(x) >= LOBES ? 0 : LOBES * Math.sin(p) * Math.sin(p / LOBES) / p / p;
  }
}
