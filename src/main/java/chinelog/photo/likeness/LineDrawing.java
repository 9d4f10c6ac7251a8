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

  private static final LineDrawing NONE = new LineDrawing(0, 0, Recognition.Area.WHOLE);

  static LineDrawing in(Pixels picture) throws IOException {
    Pixels small = picture.sized(Math.min(EDGE_PX, picture.longEdgePx()));
    int w = small.widthPx();
    int h = small.heightPx();
    int columns = Math.max(1, w / CELL_PX);
    int rows = Math.max(1, h / CELL_PX);
    if (colourless(small, columns, rows) < Math.min(WORTH_SEARCHING, DRAWING) * columns * rows) {
      return NONE;
    }
    Luma luma = small.luma();
    byte[] ground = LineMap.closed(luma);
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

  /** How many squares may be paper at all: most of a picture of wood is not, and is soon told. */
  private static int colourless(Pixels picture, int columns, int rows) {
    int count = 0;
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        if (isColourless(picture, column * CELL_PX, row * CELL_PX)) {
          count++;
        }
      }
    }
    return count;
  }

  private static boolean isColourless(Pixels picture, int left, int top) {
    int right = Math.min(picture.widthPx(), left + CELL_PX);
    int bottom = Math.min(picture.heightPx(), top + CELL_PX);
    byte[] bgr = picture.bgr();
    long blue = 0;
    long green = 0;
    long red = 0;
    for (int y = top; y < bottom; y++) {
      int end = 3 * (y * picture.widthPx() + right);
      for (int at = 3 * (y * picture.widthPx() + left); at < end; at += 3) {
        blue += bgr[at] & 0xFF;
        green += bgr[at + 1] & 0xFF;
        red += bgr[at + 2] & 0xFF;
      }
    }
    long strongest = Math.max(blue, Math.max(green, red));
    long weakest = Math.min(blue, Math.min(green, red));
    return strongest - weakest < COLOURED * strongest;
  }

  /** Which part of a square is line; 0 where the ground is dark, uneven or coloured. */
  private static double lines(Pixels picture, Luma luma, byte[] ground, int left, int top) {
    if (!isColourless(picture, left, top)) {
      return 0;
    }
    int right = Math.min(picture.widthPx(), left + CELL_PX);
    int bottom = Math.min(picture.heightPx(), top + CELL_PX);
    int least = 255;
    int most = 0;
    int lines = 0;
    for (int y = top; y < bottom; y++) {
      for (int x = left; x < right; x++) {
        int at = y * picture.widthPx() + x;
        int light = ground[at] & 0xFF;
        least = Math.min(least, light);
        most = Math.max(most, light);
        if (light - (luma.bytes()[at] & 0xFF) > Math.max(NOISE, LINE * light)) {
          lines++;
        }
      }
    }
    boolean paper = most > LIGHT && most - least < UNEVEN * most;
    return paper ? (double) lines / ((right - left) * (bottom - top)) : 0;
  }
}
