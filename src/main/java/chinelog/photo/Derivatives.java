package chinelog.photo;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * All sizes of one picture, made from one decode, each from the next larger.
 *
 * @param jpegs from the smallest to the largest
 * @param tint mean colour of the smallest
 * @param signature of the picture
 */
record Derivatives(List<Jpg> jpegs, String tint, Signature signature) {

  /** Sharpness is measured at this size, so that a few more pixels do not count as sharper. */
  private static final int MEASURED_PX = 1600;

  /** An encoded picture. */
  record Jpg(int widthPx, int heightPx, byte[] bytes) {}

  static Derivatives of(Picture stored, Orientation orientation) throws IOException {
    return of(stored, orientation, stored.widthPx(), stored.heightPx());
  }

  /**
   * @param stored decoded, with its regions filled; may be smaller than the source, but no smaller
   *     than the largest derivative
   * @param sourceWidthPx as stored
   * @param sourceHeightPx as stored
   */
  static Derivatives of(
      Picture stored, Orientation orientation, int sourceWidthPx, int sourceHeightPx)
      throws IOException {
    int longer = Math.max(sourceWidthPx, sourceHeightPx);
    int w = orientation.swapsSides() ? sourceHeightPx : sourceWidthPx;
    int h = orientation.swapsSides() ? sourceWidthPx : sourceHeightPx;
    List<Integer> edges =
        Darkroom.LONG_EDGES_PX.stream().map(edge -> Math.min(edge, longer)).distinct().toList();
    List<Jpg> jpegs = new ArrayList<>();
    double sharpness = 0;
    Picture picture = stored;
    for (int i = edges.size() - 1; i >= 0; i--) {
      int edge = edges.get(i);
      if (i == edges.size() - 1) {
        // Turned only when small; filters work the same along both sides.
        picture =
            stored
                .scaled(
                    Resampler.side(sourceWidthPx, longer, edge),
                    Resampler.side(sourceHeightPx, longer, edge))
                .upright(orientation);
      } else {
        picture = picture.scaled(Resampler.side(w, longer, edge), Resampler.side(h, longer, edge));
      }
      if (edge <= MEASURED_PX && sharpness == 0) {
        sharpness = Signature.sharpness(picture.luma());
      }
      jpegs.add(0, new Jpg(picture.widthPx(), picture.heightPx(), picture.encoded()));
    }
    return new Derivatives(
        List.copyOf(jpegs), picture.tint(), Signature.of(picture.luma(), sharpness));
  }
}
