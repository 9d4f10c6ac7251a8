package chinelog.photo.likeness;

import chinelog.photo.pixels.Luma;
import chinelog.photo.pixels.Pixels;
import java.io.IOException;

/**
 * How much of a picture looks like a drawing: thin dark lines on a light, even, colourless ground.
 *
 * @param share of the frame that is such ground with lines on it, 0 to 1
 * @param textured the same, but with fine texture counted too, as on a screen that was photographed
 * @param area what encloses it
 */
record LineDrawing(double share, double textured, Recognition.Area area) {

  /**
   * Of a whole drawing in a quarter of the frame, at least 0.15 was measured, and of photographs of
   * planks at most 0.10; no source.
   */
  private static final double DRAWING = 0.15;

  /** Below this a photograph is not searched for drawings; no source. */
  private static final double WORTH_SEARCHING = 0.1;

  private static final int EDGE_PX = 800;
  private static final int CELL_PX = 20;
  private static final int LIGHT = 70;
  private static final double UNEVEN = 0.14;
  private static final double COLOURED = 0.3;
  private static final double LINE = 0.06;
  private static final int NOISE = 6;
  private static final double FEWEST = 0.02;
  private static final double MOST = 0.4;

  static LineDrawing in(Pixels picture) throws IOException {
    Pixels small = picture.sized(Math.min(EDGE_PX, picture.longEdgePx()));
    int w = small.widthPx();
    int h = small.heightPx();
    Luma luma = small.luma();
    byte[] ground = LineMap.closed(luma);
    int columns = Math.max(1, w / CELL_PX);
    int rows = Math.max(1, h / CELL_PX);
    int lined = 0;
    int textured = 0;
    int left = columns;
    int top = rows;
    int right = 0;
    int bottom = 0;
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        double lines = lines(small, luma, ground, column * CELL_PX, row * CELL_PX);
        if (lines > FEWEST) {
          textured++;
        }
        if (lines > FEWEST && lines < MOST) {
          lined++;
          left = Math.min(left, column);
          right = Math.max(right, column + 1);
          top = Math.min(top, row);
          bottom = Math.max(bottom, row + 1);
        }
      }
    }
    double cells = (double) columns * rows;
    Recognition.Area area =
        lined == 0
            ? Recognition.Area.WHOLE
            : new Recognition.Area(
                (double) left / columns,
                (double) top / rows,
                (double) right / columns,
                (double) bottom / rows);
    return new LineDrawing(lined / cells, textured / cells, area);
  }

  boolean isLikely() {
    return share >= DRAWING;
  }

  boolean isWorthSearching() {
    return textured >= WORTH_SEARCHING;
  }

  /** Which part of a square is line; 0 where the ground is dark, uneven or coloured. */
  private static double lines(Pixels picture, Luma luma, byte[] ground, int left, int top) {
    int right = Math.min(picture.widthPx(), left + CELL_PX);
    int bottom = Math.min(picture.heightPx(), top + CELL_PX);
    int least = 255;
    int most = 0;
    int lines = 0;
    long[] sums = new long[3];
    for (int y = top; y < bottom; y++) {
      for (int x = left; x < right; x++) {
        int at = y * picture.widthPx() + x;
        int light = ground[at] & 0xFF;
        least = Math.min(least, light);
        most = Math.max(most, light);
        if (light - (luma.bytes()[at] & 0xFF) > Math.max(NOISE, LINE * light)) {
          lines++;
        }
        for (int c = 0; c < 3; c++) {
          sums[c] += picture.bgr()[3 * at + c] & 0xFF;
        }
      }
    }
    long strongest = Math.max(sums[0], Math.max(sums[1], sums[2]));
    long weakest = Math.min(sums[0], Math.min(sums[1], sums[2]));
    boolean paper =
        most > LIGHT && most - least < UNEVEN * most && strongest - weakest < COLOURED * strongest;
    return paper ? (double) lines / ((right - left) * (bottom - top)) : 0;
  }
}
