package chinelog.photo;

/**
 * Structural similarity of two grey pictures (Wang, Bovik, Sheikh, Simoncelli, "Image quality
 * assessment", 2004) as the mean over windows of 8 × 8, with C1 = 6.5025 and C2 = 58.5225.
 */
public final class Ssim {

  private static final double C1 = 6.5025;
  private static final double C2 = 58.5225;
  private static final int WINDOW = 8;
  private static final int STEP = 4;

  private Ssim() {}

  public static double of(byte[] a, byte[] b, int w, int h) {
    double total = 0;
    long windows = 0;
    for (int y = 0; y + WINDOW <= h; y += STEP) {
      for (int x = 0; x + WINDOW <= w; x += STEP) {
        total += window(a, b, w, x, y);
        windows++;
      }
    }
    return total / windows;
  }

  private static double window(byte[] a, byte[] b, int w, int left, int top) {
    double n = WINDOW * WINDOW;
    double sa = 0;
    double sb = 0;
    double saa = 0;
    double sbb = 0;
    double sab = 0;
    for (int y = top; y < top + WINDOW; y++) {
      for (int x = left; x < left + WINDOW; x++) {
        int p = a[y * w + x] & 0xFF;
        int q = b[y * w + x] & 0xFF;
        sa += p;
        sb += q;
        saa += p * p;
        sbb += q * q;
        sab += p * q;
      }
    }
    double ma = sa / n;
    double mb = sb / n;
    double va = saa / n - ma * ma;
    double vb = sbb / n - mb * mb;
    double cov = sab / n - ma * mb;
    return (2 * ma * mb + C1) * (2 * cov + C2) / ((ma * ma + mb * mb + C1) * (va + vb + C2));
  }
}
