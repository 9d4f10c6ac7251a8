package chinelog.photo.likeness;

import boofcv.struct.image.GrayF32;
import chinelog.photo.pixels.Luma;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;

/**
 * What of a picture is thin dark line on a light, even ground, such as a drawing on paper.
 *
 * <p>The lines are what a morphological closing takes away (the black top-hat transform), relative
 * to the lightness of the ground, so that shade and faded ink hardly matter.
 */
record LineMap(int widthPx, int heightPx, float[] lines) {

  /** Half the side of the closing's square: lines up to 6 pixels wide are thin. */
  private static final int THIN_PX = 3;

  /** The ground is judged in squares of this size. */
  private static final int CELL_PX = 16;

  /** Darker ground is not looked at, as its noise would be taken for lines. */
  private static final int DARKEST = 60;

  /** How far the ground's lightness may vary within a square, in parts of its lightest. */
  private static final double UNEVEN = 0.2;

  private static final int NOISE = 6;
  private static final int DARKEST_LINE = 40;
  private static final int WHITE = 255;
  private static final long NEGATIVE = -1;
  private static final long HIGH_BITS = 0x8080808080808080L;

  static LineMap of(Luma luma) {
    int w = luma.widthPx();
    int h = luma.heightPx();
    byte[] ground = closed(luma, THIN_PX);
    float[] lines = new float[w * h];
    for (int top = 0; top < h; top += CELL_PX) {
      for (int left = 0; left < w; left += CELL_PX) {
        int right = Math.min(w, left + CELL_PX);
        int bottom = Math.min(h, top + CELL_PX);
        if (isEven(ground, w, left, top, right, bottom)) {
          for (int y = top; y < bottom; y++) {
            for (int x = left; x < right; x++) {
              int at = y * w + x;
              int light = ground[at] & 0xFF;
              float darker = 255f * (light - (luma.bytes()[at] & 0xFF)) / Math.max(40, light);
              lines[at] = Math.max(0, Math.min(DARKEST_LINE, darker - NOISE));
            }
          }
        }
      }
    }
    return new LineMap(w, h, lines);
  }

  private static boolean isEven(byte[] ground, int w, int left, int top, int right, int bottom) {
    int least = WHITE;
    int most = 0;
    for (int y = top; y < bottom; y++) {
      for (int x = left; x < right; x++) {
        int v = ground[y * w + x] & 0xFF;
        least = Math.min(least, v);
        most = Math.max(most, v);
      }
    }
    return most > DARKEST && most - least < UNEVEN * most;
  }

  /** The lines in black on white, a little softened, for the detector of features. */
  GrayF32 picture() {
    GrayF32 picture = new GrayF32(widthPx, heightPx);
    Arrays.fill(picture.data, WHITE);
    float full = (float) WHITE / DARKEST_LINE / 12;
    for (int y = 1; y < heightPx - 1; y++) {
      for (int x = 1; x < widthPx - 1; x++) {
        int at = y * widthPx + x;
        float beside = lines[at - 1] + lines[at + 1] + lines[at - widthPx] + lines[at + widthPx];
        float across =
            lines[at - widthPx - 1]
                + lines[at - widthPx + 1]
                + lines[at + widthPx - 1]
                + lines[at + widthPx + 1];
        picture.data[at] = Math.max(0, WHITE - full * (4 * lines[at] + 2 * beside + across));
      }
    }
    return picture;
  }

  /**
   * Lightest of the neighbourhood, then darkest of that: the picture without its thin lines.
   *
   * @param halfPx half the side of the neighbourhood: lines up to twice as wide are gone
   */
  static byte[] closed(Luma luma, int halfPx) {
    int w = luma.widthPx();
    int h = luma.heightPx();
    byte[] light = lightest(luma.bytes(), w, h, halfPx, 0);
    return lightest(light, w, h, halfPx, NEGATIVE);
  }

  /**
   * The lightest of each sample's neighbourhood, eight samples at a time.
   *
   * @param mask what samples are laid over before and after: the darkest is the lightest of the
   *     negative
   */
  private static byte[] lightest(byte[] of, int w, int h, int half, long mask) {
    // A word more than a row needs: what is shifted in from the next row never reaches a sample.
    int words = (w + 2 * half + Long.BYTES - 1) / Long.BYTES + 1;
    byte[] padded = new byte[words * Long.BYTES * h];
    for (int y = 0; y < h; y++) {
      int row = y * words * Long.BYTES;
      System.arraycopy(of, y * w, padded, row + half, w);
      Arrays.fill(padded, row, row + half, of[y * w]);
      Arrays.fill(padded, row + half + w, row + w + 2 * half, of[y * w + w - 1]);
    }
    long[] rows = new long[words * h];
    ByteBuffer.wrap(padded).order(ByteOrder.LITTLE_ENDIAN).asLongBuffer().get(rows);
    for (int i = 0; i < rows.length; i++) {
      rows[i] ^= mask;
    }
    for (int n = 1; n <= 2 * half; ) {
      int by = Math.min(n, 2 * half + 1 - n);
      n += by;
      lighterBeside(rows, by);
    }
    long[] columns = new long[words * (h + 2 * half)];
    for (int y = 0; y < h + 2 * half; y++) {
      int from = Math.min(h - 1, Math.max(0, y - half));
      System.arraycopy(rows, from * words, columns, y * words, words);
    }
    for (int n = 1; n <= 2 * half; ) {
      int by = Math.min(n, 2 * half + 1 - n);
      n += by;
      lighterBelow(columns, by * words);
    }
    for (int i = 0; i < rows.length; i++) {
      rows[i] = columns[i] ^ mask;
    }
    ByteBuffer.wrap(padded).order(ByteOrder.LITTLE_ENDIAN).asLongBuffer().put(rows);
    byte[] lightest = new byte[w * h];
    for (int y = 0; y < h; y++) {
      System.arraycopy(padded, y * words * Long.BYTES, lightest, y * w, w);
    }
    return lightest;
  }

  /** Puts in the place of each sample the lighter of it and that so many samples after it. */
  private static void lighterBeside(long[] samples, int by) {
    int whole = by / Long.BYTES;
    int bits = by % Long.BYTES * Byte.SIZE;
    for (int i = 0; i + whole + 1 < samples.length; i++) {
      long first = samples[i + whole];
      // To shift by 64 would be not to shift at all.
      long other = bits == 0 ? first : first >>> bits | samples[i + whole + 1] << -bits;
      samples[i] = lighter(samples[i], other);
    }
  }

  /** The same with samples so many words after it. */
  private static void lighterBelow(long[] samples, int by) {
    for (int i = 0; i + by < samples.length; i++) {
      samples[i] = lighter(samples[i], samples[i + by]);
    }
  }

  /** The larger of each two of eight bytes, without regard to sign. */
  private static long lighter(long a, long b) {
    long difference = (a | HIGH_BITS) - (b & ~HIGH_BITS);
    long atLeast = (a & ~b | ~(a ^ b) & difference) & HIGH_BITS;
    long bytes = atLeast | atLeast - (atLeast >>> 7);
    return b ^ (a ^ b) & bytes;
  }
}
