package chinelog.photo.pixels;

/**
 * How a stored picture is turned upright: EXIF 2.32, tag 274.
 *
 * <p>Every case is made of at most three steps, in this order: swap rows with columns, mirror left
 * to right, mirror top to bottom.
 */
public enum Orientation {
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
  public static Orientation of(int tag) {
    return tag >= 1 && tag <= 8 ? values()[tag - 1] : AS_STORED;
  }

  public int tag() {
    return ordinal() + 1;
  }

  public boolean swapsSides() {
    return swapped;
  }

  /**
   * Where a box of the upright picture lies in the stored one.
   *
   * @param widthPx of the upright picture
   * @param heightPx of the upright picture
   */
  public Box stored(Box upright, int widthPx, int heightPx) {
    int left = mirrored ? widthPx - upright.right() : upright.left();
    int right = mirrored ? widthPx - upright.left() : upright.right();
    int top = flipped ? heightPx - upright.bottom() : upright.top();
    int bottom = flipped ? heightPx - upright.top() : upright.bottom();
    return swapped ? new Box(top, left, bottom, right) : new Box(left, top, right, bottom);
  }

  /**
   * Where a box of the stored picture lies in the upright one.
   *
   * @param widthPx of the upright picture
   * @param heightPx of the upright picture
   */
  public Box upright(Box stored, int widthPx, int heightPx) {
    Box turned =
        swapped ? new Box(stored.top(), stored.left(), stored.bottom(), stored.right()) : stored;
    return new Box(
        mirrored ? widthPx - turned.right() : turned.left(),
        flipped ? heightPx - turned.bottom() : turned.top(),
        mirrored ? widthPx - turned.left() : turned.right(),
        flipped ? heightPx - turned.top() : turned.bottom());
  }

  /**
   * The stored picture turned upright, pixel by pixel. Thumbnailator would turn it about its centre
   * and so blend neighbours where one side is odd and the other even.
   */
  Pixels upright(Pixels stored) {
    if (this == AS_STORED) {
      return stored;
    }
    int w = swapped ? stored.heightPx() : stored.widthPx();
    int h = swapped ? stored.widthPx() : stored.heightPx();
    byte[] from = stored.bgr();
    byte[] to = new byte[from.length];
    for (int y = 0, t = 0; y < h; y++) {
      int down = flipped ? h - 1 - y : y;
      for (int x = 0; x < w; x++, t += 3) {
        int across = mirrored ? w - 1 - x : x;
        int s = 3 * (swapped ? across * stored.widthPx() + down : down * stored.widthPx() + across);
        to[t] = from[s];
        to[t + 1] = from[s + 1];
        to[t + 2] = from[s + 2];
      }
    }
    return new Pixels(w, h, to);
  }
}
