package chinelog.photo.derivatives;

import chinelog.log.records.PhotoFile;
import chinelog.photo.album.Photograph;
import chinelog.photo.pixels.Box;
import chinelog.photo.pixels.Orientation;
import java.util.List;

/**
 * What has to be filled so that nothing of a region remains.
 *
 * <p>A camera's JPEG smears each block, of up to 32 pixels a side where colours are thinned out
 * most (ITU-T T.81, A.2.3), and a photograph saved again after an edit smears further, by up to 30
 * pixels where this was measured. A region is therefore grown by 32 pixels, out to the grid of
 * blocks as stored, and by one pixel more, as decoders blend colours across a block's edge.
 */
final class Mask {

  private static final int SMEAR_PX = 32;
  private static final int BLOCK_PX = 32;
  private static final int BLEND_PX = 1;

  private Mask() {}

  /** Boxes of the stored picture, in a fixed order. */
  static List<Box> of(Photograph photograph, List<PhotoFile.Region> regions) {
    Orientation orientation = Orientation.of(photograph.orientation());
    int w = photograph.widthPx();
    int h = photograph.heightPx();
    int storedW = orientation.swapsSides() ? h : w;
    int storedH = orientation.swapsSides() ? w : h;
    return regions.stream()
        .map(region -> orientation.stored(upright(region, w, h), w, h))
        .map(box -> box.grown(SMEAR_PX, storedW, storedH))
        .map(box -> box.onGrid(BLOCK_PX, storedW, storedH))
        .map(box -> box.grown(BLEND_PX, storedW, storedH))
        .distinct()
        .sorted()
        .toList();
  }

  /** A region that makes no sense is taken to be the whole picture. */
  private static Box upright(PhotoFile.Region r, int w, int h) {
    boolean sense =
        r.measure() == PhotoFile.Measure.PARTS
            && r.left() >= 0
            && r.top() >= 0
            && r.right() <= 1
            && r.bottom() <= 1
            && r.left() < r.right()
            && r.top() < r.bottom();
    return sense
        ? new Box(
            (int) Math.floor(r.left() * w),
            (int) Math.floor(r.top() * h),
            (int) Math.ceil(r.right() * w),
            (int) Math.ceil(r.bottom() * h))
        : new Box(0, 0, w, h);
  }
}
