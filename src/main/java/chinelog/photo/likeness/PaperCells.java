package chinelog.photo.likeness;

import chinelog.photo.pixels.Luma;
import chinelog.photo.pixels.Pixels;

/** A picture in squares, each of which may be paper with lines on it. */
final class PaperCells {

  private static final int CELL_PX = 20;
  private static final int LIGHT = 70;
  private static final double UNEVEN = 0.14;
  private static final double LINE = 0.06;
  private static final int NOISE = 6;
  private static final double FEWEST = 0.02;
  private static final double MOST = 0.4;

  /** Directions are told apart by ten degrees. */
  private static final int DIRECTIONS = 18;

  /** Squared; of a weaker slope the direction is chance. */
  private static final int STEEP = 200;

  private final Pixels picture;
  private final int columns;
  private final int rows;

  PaperCells(Pixels picture) {
    this.picture = picture;
    this.columns = Math.max(1, picture.widthPx() / CELL_PX);
    this.rows = Math.max(1, picture.heightPx() / CELL_PX);
  }

  /**
   * What of the picture is paper with lines.
   *
   * @param lined in parts of the picture
   * @param textured the same, with squares that are more line than paper
   * @param astray how many of the lines run in other directions than the two that most have
   * @param area what encloses it
   */
  record Lined(double lined, double textured, double astray, Recognition.Area area) {}

  /**
   * Looks for lines.
   *
   * @param ground the picture without what may be line
   * @param coloured how far the colours of paper may lie apart, in parts of the strongest
   */
  Lined lined(Luma luma, byte[] ground, double coloured) {
    int lined = 0;
    int textured = 0;
    int left = columns;
    int top = rows;
    int right = 0;
    int bottom = 0;
    int[] directions = new int[DIRECTIONS];
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        int x = column * CELL_PX;
        int y = row * CELL_PX;
        double lines = isColourless(x, y, coloured) ? lines(luma, ground, x, y) : 0;
        if (lines > FEWEST) {
          textured++;
        }
        if (lines > FEWEST && lines < MOST) {
          lined++;
          left = Math.min(left, column);
          right = Math.max(right, column + 1);
          top = Math.min(top, row);
          bottom = Math.max(bottom, row + 1);
          directions(luma, ground, x, y, directions);
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
    return new Lined(lined / cells, textured / cells, astray(directions), area);
  }

  /** How much of the picture may be paper at all: most of wood is not, and is soon told. */
  double colourless(double coloured) {
    int count = 0;
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        if (isColourless(column * CELL_PX, row * CELL_PX, coloured)) {
          count++;
        }
      }
    }
    return count / ((double) columns * rows);
  }

  private boolean isColourless(int left, int top, double coloured) {
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
    return strongest - weakest < coloured * strongest;
  }

  /** Which part of a square is line; 0 where the ground is dark or uneven. */
  private double lines(Luma luma, byte[] ground, int left, int top) {
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
        lines += isLine(luma, ground, at) ? 1 : 0;
      }
    }
    boolean paper = most > LIGHT && most - least < UNEVEN * most;
    return paper ? (double) lines / ((right - left) * (bottom - top)) : 0;
  }

  private static boolean isLine(Luma luma, byte[] ground, int at) {
    int light = ground[at] & 0xFF;
    return light - (luma.bytes()[at] & 0xFF) > Math.max(NOISE, LINE * light);
  }

  /** Counts the directions of a square's lines, by the slopes across them (Sobel). */
  private void directions(Luma luma, byte[] ground, int left, int top, int[] directions) {
    int w = picture.widthPx();
    int right = Math.min(w - 1, left + CELL_PX);
    int bottom = Math.min(picture.heightPx() - 1, top + CELL_PX);
    for (int y = Math.max(1, top); y < bottom; y++) {
      for (int x = Math.max(1, left); x < right; x++) {
        int at = y * w + x;
        if (isLine(luma, ground, at)) {
          int across = across(luma, at, 1, w);
          int down = across(luma, at, w, 1);
          if (across * across + down * down > 4 * STEEP) {
            double angle = (Math.atan2(down, across) + Math.PI) % Math.PI;
            directions[(int) (angle / Math.PI * DIRECTIONS) % DIRECTIONS]++;
          }
        }
      }
    }
  }

  /** Twice the slope along a step, of three samples side by side. */
  private static int across(Luma luma, int at, int step, int side) {
    return 2 * slope(luma, at, step) + slope(luma, at - side, step) + slope(luma, at + side, step);
  }

  private static int slope(Luma luma, int at, int step) {
    return (luma.bytes()[at + step] & 0xFF) - (luma.bytes()[at - step] & 0xFF);
  }

  /** Takes away the two strongest directions, each with its neighbours. */
  private static double astray(int[] directions) {
    int[] rest = directions.clone();
    int all = 0;
    for (int n : directions) {
      all += n;
    }
    int most = 0;
    for (int k = 0; k < 2; k++) {
      int best = 0;
      for (int i = 1; i < DIRECTIONS; i++) {
        best = around(rest, i) > around(rest, best) ? i : best;
      }
      most += around(rest, best);
      rest[best] = 0;
      rest[(best + 1) % DIRECTIONS] = 0;
      rest[(best + DIRECTIONS - 1) % DIRECTIONS] = 0;
    }
    return all == 0 ? 0 : 1 - (double) most / all;
  }

  private static int around(int[] directions, int i) {
    return directions[i]
        + directions[(i + 1) % DIRECTIONS]
        + directions[(i + DIRECTIONS - 1) % DIRECTIONS];
  }
}
