package chinelog.photo.derivatives;

import chinelog.photo.pixels.Orientation;
import chinelog.photo.pixels.Pixels;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * All sizes of one picture, made from one decode, each from the next larger.
 *
 * @param jpegs from the smallest to the largest
 * @param signature of the picture
 */
record Derivatives(List<Jpg> jpegs, Signature signature) {

  /** Sharpness is measured at this size, so that a few more pixels do not count as sharper. */
  private static final int MEASURED_PX = 1600;

  /** An encoded picture. */
  record Jpg(int widthPx, int heightPx, byte[] bytes) {}

  /**
   * @param stored decoded, with its regions filled
   */
  static Derivatives of(Pixels stored, Orientation orientation) throws IOException {
    List<Integer> edges =
        Darkroom.LONG_EDGES_PX.stream()
            .map(edge -> Math.min(edge, stored.longEdgePx()))
            .distinct()
            .toList();
    List<Jpg> jpegs = new ArrayList<>();
    double sharpness = 0;
    // Turned only when small.
    Pixels picture = stored.sized(edges.get(edges.size() - 1)).upright(orientation);
    for (int i = edges.size() - 1; i >= 0; i--) {
      picture = picture.sized(edges.get(i));
      if (edges.get(i) <= MEASURED_PX && sharpness == 0) {
        sharpness = Signature.sharpness(picture.luma());
      }
      jpegs.add(0, new Jpg(picture.widthPx(), picture.heightPx(), picture.encoded()));
    }
    return new Derivatives(List.copyOf(jpegs), Signature.of(picture, sharpness));
  }
}
