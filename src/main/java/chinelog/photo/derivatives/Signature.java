package chinelog.photo.derivatives;

import chinelog.photo.pixels.Luma;
import chinelog.photo.pixels.Pixels;
import java.io.IOException;

/**
 * A few numbers that describe how a picture looks, for finding near-duplicates.
 *
 * @param sharpness variance of the Laplacian; larger is sharper, comparable between pictures of one
 *     subject only
 * @param view the picture squeezed into 64 rows of 64 grey samples
 */
public record Signature(double sharpness, View view) {

  static Signature of(Pixels picture, double sharpness) throws IOException {
    Pixels small = picture.squeezed(View.SIDE, View.SIDE);
    return new Signature(sharpness, new View(small.luma().bytes()));
  }

  /**
   * Variance of the Laplacian with the kernel 0 1 0, 1 -4 1, 0 1 0 over interior pixels
   * (Pech-Pacheco et al., "Diatom autofocusing in brightfield microscopy", 2000; cited from
   * memory). 0 where there is no interior.
   */
  static double sharpness(Luma picture) {
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
