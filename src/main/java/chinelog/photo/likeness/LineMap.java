package chinelog.photo.likeness;

import boofcv.struct.image.GrayF32;
import chinelog.photo.pixels.Luma;
import java.util.Arrays;

/**
 * What of a picture is thin dark line on a light, even ground, such as a drawing on paper.
 *
 * <p>The lines are what a morphological closing takes away (the black top-hat transform), relative
 * to the lightness of the ground, so that shade and faded ink hardly matter.
 */
final class LineMap {

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

  private final int widthPx;
  private final int heightPx;
  private final float[] lines;

  private LineMap(int widthPx, int heightPx, float[] lines) {
    this.widthPx = widthPx;
    this.heightPx = heightPx;
    this.lines = lines;
  }

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
    int[] light = new int[w * h];
    for (int i = 0; i < light.length; i++) {
      light[i] = luma.bytes()[i] & 0xFF;
    }
    light = lightest(light, w, h, halfPx);
    // The darkest is the lightest of the negative.
    for (int i = 0; i < light.length; i++) {
      light[i] = WHITE - light[i];
    }
    light = lightest(light, w, h, halfPx);
    byte[] closed = new byte[light.length];
    for (int i = 0; i < closed.length; i++) {
      closed[i] = (byte) (WHITE - light[i]);
    }
    return closed;
  }

  /** The lightest of each sample's neighbourhood. */
  private static int[] lightest(int[] of, int w, int h, int half) {
    int[] inRows = new int[of.length];
    int[] row = new int[w + 2 * half];
    for (int y = 0; y < h; y++) {
      System.arraycopy(of, y * w, row, half, w);
      Arrays.fill(row, 0, half, row[half]);
      Arrays.fill(row, half + w, row.length, row[half + w - 1]);
      lightestAlong(row, 1, row.length, half);
      System.arraycopy(row, 0, inRows, y * w, w);
    }
    int[] columns = new int[(h + 2 * half) * w];
    for (int y = 0; y < h + 2 * half; y++) {
      int from = Math.min(h - 1, Math.max(0, y - half));
      System.arraycopy(inRows, from * w, columns, y * w, w);
    }
    lightestAlong(columns, w, columns.length, half);
    return Arrays.copyOf(columns, of.length);
  }

  /**
   * Puts in the place of each sample the lightest of it and the twice {@code half} that follow it:
   * of two, of two of these, and so on, and at last of two of those that overlap.
   */
  private static void lightestAlong(int[] samples, int step, int length, int half) {
    int wanted = 2 * half + 1;
    for (int n = 1; n < wanted; ) {
      int by = Math.min(n, wanted - n);
      n += by;
      lighter(samples, by * step, length - (n - 1) * step);
    }
  }

  private static void lighter(int[] samples, int by, int length) {
    for (int i = 0; i < length; i++) {
      int other = samples[i + by];
      if (other > samples[i]) {
        samples[i] = other;
      }
    }
  }
}
