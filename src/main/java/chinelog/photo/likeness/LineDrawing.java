package chinelog.photo.likeness;

import chinelog.photo.pixels.Luma;
import chinelog.photo.pixels.Pixels;
import java.io.IOException;

/**
 * How much of a picture looks like a drawing: thin dark lines on a light, even, colourless ground.
 *
 * @param share of the frame that is such ground with lines on it, 0 to 1
 * @param lined the same, but with broader lines and warmer light counted too
 * @param textured the same, but with fine texture counted as well, as on a screen that was
 *     photographed
 * @param fine how much of {@code share} is left where only the finest lines are looked for
 * @param astray how many of the lines run in other directions than the two that most have; planks
 *     and tiles have none
 * @param area what encloses the ground with lines
 */
record LineDrawing(
    double share,
    double lined,
    double textured,
    double fine,
    double astray,
    Recognition.Area area) {

  /**
   * Of a whole drawing in a quarter of the frame, at least 0.11 was measured; of other things, as
   * far as they are fine and astray enough, at most 0.09; no source.
   */
  private static final double DRAWING = 0.125;

  /** Of drawings at least 0.18 was measured, of checked cloth and tools at most 0.02; no source. */
  private static final double FINE = 0.1;

  /** Of drawings at least 0.19 was measured, of planks and tiles at most 0.12; no source. */
  private static final double ASTRAY = 0.15;

  /** A picture that is searched for is looked at by its lines alone from here on; no source. */
  private static final double LINED = 0.15;

  /** Below this a photograph is not searched for drawings; no source. */
  private static final double WORTH_SEARCHING = 0.1;

  private static final int EDGE_PX = 800;

  /** Half the side of the closing's square, for whatever may be line, for lines and fine lines. */
  private static final int[] HALF_PX = {3, 2, 1};

  private static final double COLOURED = 0.3;
  private static final double PAPER_COLOURED = 0.22;

  private static final LineDrawing NONE = new LineDrawing(0, 0, 0, 0, 0, Recognition.Area.WHOLE);

  static LineDrawing in(Pixels picture) throws IOException {
    Pixels small = picture.sized(Math.min(EDGE_PX, picture.longEdgePx()));
    PaperCells cells = new PaperCells(small);
    if (cells.colourless(COLOURED) < WORTH_SEARCHING) {
      return NONE;
    }
    Luma luma = small.luma();
    PaperCells.Lined all = cells.lined(luma, LineMap.closed(luma, HALF_PX[0]), COLOURED);
    LineDrawing worth = new LineDrawing(0, all.lined(), all.textured(), 0, 0, all.area());
    if (all.lined() < DRAWING) {
      return worth;
    }
    PaperCells.Lined lines = cells.lined(luma, LineMap.closed(luma, HALF_PX[1]), PAPER_COLOURED);
    if (lines.lined() < DRAWING) {
      return worth;
    }
    PaperCells.Lined finest = cells.lined(luma, LineMap.closed(luma, HALF_PX[2]), PAPER_COLOURED);
    return new LineDrawing(
        lines.lined(),
        all.lined(),
        all.textured(),
        finest.lined() / lines.lined(),
        lines.astray(),
        lines.area());
  }

  boolean isLikely() {
    return share >= DRAWING && fine >= FINE && astray >= ASTRAY;
  }

  /** Whether a picture that is searched for has little but lines, such as a sheet. */
  boolean isLined() {
    return lined >= LINED;
  }

  boolean isWorthSearching() {
    return textured >= WORTH_SEARCHING;
  }
}
