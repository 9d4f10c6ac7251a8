package chinelog.photo;

/**
 * How a picture looks, in a few numbers, for finding others that look like it.
 *
 * @param hash difference hash: 8 rows of 9 grey samples; a bit is set where the right of two
 *     neighbours is lighter, the first pair in the highest bit
 * @param sharpness variance of the Laplacian; larger is sharper, comparable between pictures of one
 *     subject only
 * @param view the picture squeezed into 64 rows of 64 grey samples
 */
record Signature(long hash, double sharpness, View view) {

  private static final int COLUMNS = 9;
  private static final int ROWS = 8;

  static Signature of(Samples luma, double sharpness) {
    return new Signature(
        differenceHash(Resampler.scale(luma, COLUMNS, ROWS).bytes()),
        sharpness,
        new View(Resampler.scale(luma, View.SIDE, View.SIDE).bytes()));
  }

  /**
   * @param luma 8 rows of 9
   */
  static long differenceHash(byte[] luma) {
    long hash = 0;
    for (int row = 0; row < ROWS; row++) {
      for (int column = 0; column < COLUMNS - 1; column++) {
        int at = row * COLUMNS + column;
        hash = hash << 1 | ((luma[at + 1] & 0xFF) > (luma[at] & 0xFF) ? 1 : 0);
      }
    }
    return hash;
  }

  /** In how many bits two hashes differ, 0 to 64. */
  static int distance(long a, long b) {
    return Long.bitCount(a ^ b);
  }

  /**
   * Variance of the Laplacian with the kernel 0 1 0, 1 -4 1, 0 1 0 over interior pixels
   * (Pech-Pacheco et al., "Diatom autofocusing in brightfield microscopy", 2000; cited from
   * memory). 0 where there is no interior.
   */
  static double sharpness(Samples picture) {
    byte[] luma = picture.bytes();
    int widthPx = picture.widthPx();
    int heightPx = picture.heightPx();
    long n = Math.max(0, widthPx - 2L) * Math.max(0, heightPx - 2L);
    if (n == 0) {
      return 0;
    }
    long sum = 0;
    long squares = 0;
    for (int y = 1; y < heightPx - 1; y++) {
      for (int x = 1; x < widthPx - 1; x++) {
        int at = y * widthPx + x;
        int v =
            (luma[at - 1] & 0xFF)
                + (luma[at + 1] & 0xFF)
                + (luma[at - widthPx] & 0xFF)
                + (luma[at + widthPx] & 0xFF)
                - 4 * (luma[at] & 0xFF);
        sum += v;
        squares += (long) v * v;
      }
    }
    double mean = (double) sum / n;
    return (double) squares / n - mean * mean;
  }
}
