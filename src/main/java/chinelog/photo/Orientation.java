package chinelog.photo;

/**
 * How a stored picture is turned upright: EXIF 2.32, tag 274.
 *
 * <p>Every case is made of at most three steps, in this order: swap rows with columns, mirror left
 * to right, mirror top to bottom.
 */
enum Orientation {
  AS_STORED(false, false, false),
  MIRRORED(false, true, false),
  TURNED_180(false, true, true),
  FLIPPED(false, false, true),
  TRANSPOSED(true, false, false),
  TURNED_RIGHT(true, true, false),
  TRANSVERSED(true, true, true),
  TURNED_LEFT(true, false, true);

  private final boolean swapped;
  private final boolean mirrored;
  private final boolean flipped;

  Orientation(boolean swapped, boolean mirrored, boolean flipped) {
    this.swapped = swapped;
    this.mirrored = mirrored;
    this.flipped = flipped;
  }

  /** Of the tag's value; a stray value such as 9 means as stored. */
  static Orientation of(int tag) {
    return tag >= 1 && tag <= 8 ? values()[tag - 1] : AS_STORED;
  }

  int tag() {
    return ordinal() + 1;
  }

  boolean swapsSides() {
    return swapped;
  }

  /**
   * Where a box of the upright picture lies in the stored one.
   *
   * @param widthPx of the upright picture
   * @param heightPx of the upright picture
   */
  Box stored(Box upright, int widthPx, int heightPx) {
    int left = mirrored ? widthPx - upright.right() : upright.left();
    int right = mirrored ? widthPx - upright.left() : upright.right();
    int top = flipped ? heightPx - upright.bottom() : upright.top();
    int bottom = flipped ? heightPx - upright.top() : upright.bottom();
    return swapped ? new Box(top, left, bottom, right) : new Box(left, top, right, bottom);
  }

  Samples upright(Samples stored) {
    if (this == AS_STORED) {
      return stored;
    }
    int w = swapped ? stored.heightPx() : stored.widthPx();
    int h = swapped ? stored.widthPx() : stored.heightPx();
    byte[] from = stored.bytes();
    byte[] to = new byte[from.length];
    int channels = stored.channels();
    int stride = stored.widthPx();
    for (int y = 0, t = 0; y < h; y++) {
      int sy = flipped ? h - 1 - y : y;
      for (int x = 0; x < w; x++) {
        int sx = mirrored ? w - 1 - x : x;
        int s = channels * (swapped ? sx * stride + sy : sy * stride + sx);
        for (int c = 0; c < channels; c++) {
          to[t++] = from[s + c];
        }
      }
    }
    return new Samples(w, h, channels, to);
  }
}
