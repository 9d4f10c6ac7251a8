package chinelog.photo.likeness;

import boofcv.struct.image.GrayF32;
import chinelog.photo.pixels.Luma;

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
    byte[] ground = closed(luma);
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
    java.util.Arrays.fill(picture.data, WHITE);
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

  /** Lightest of the neighbourhood, then darkest of that: the picture without its thin lines. */
  static byte[] closed(Luma luma) {
    int w = luma.widthPx();
    int h = luma.heightPx();
    byte[] a = luma.bytes().clone();
    byte[] b = new byte[a.length];
    extreme(a, b, w, h, 1, w, true);
    extreme(b, a, h, w, w, 1, true);
    extreme(a, b, w, h, 1, w, false);
    extreme(b, a, h, w, w, 1, false);
    return a;
  }

  /** The largest or smallest of each sample's neighbours along one direction. */
  private static void extreme(
      byte[] from, byte[] to, int length, int rows, int step, int rowStep, boolean largest) {
    for (int row = 0; row < rows; row++) {
      int base = row * rowStep;
      for (int i = 0; i < length; i++) {
        int end = Math.min(length - 1, i + THIN_PX);
        int most = from[base + i * step] & 0xFF;
        for (int k = Math.max(0, i - THIN_PX); k <= end; k++) {
          int v = from[base + k * step] & 0xFF;
          most = largest ? Math.max(most, v) : Math.min(most, v);
        }
        to[base + i * step] = (byte) most;
      }
    }
  }
}
