package chinelog.photo.pixels;

/**
 * A rectangle of pixels.
 *
 * @param left inclusive
 * @param top inclusive
 * @param right exclusive
 * @param bottom exclusive
 */
public record Box(int left, int top, int right, int bottom) implements Comparable<Box> {

  /** Grown by {@code px} on every side, kept within the picture. */
  public Box grown(int px, int widthPx, int heightPx) {
    return new Box(
        Math.max(0, left - px),
        Math.max(0, top - px),
        Math.min(widthPx, right + px),
        Math.min(heightPx, bottom + px));
  }

  /** Grown out to a grid that begins in the left top corner, kept within the picture. */
  public Box onGrid(int stepPx, int widthPx, int heightPx) {
    return new Box(
        left / stepPx * stepPx,
        top / stepPx * stepPx,
        Math.min(widthPx, (right + stepPx - 1) / stepPx * stepPx),
        Math.min(heightPx, (bottom + stepPx - 1) / stepPx * stepPx));
  }

  @Override
  public int compareTo(Box other) {
    int order = Integer.compare(top, other.top);
    order = order != 0 ? order : Integer.compare(left, other.left);
    order = order != 0 ? order : Integer.compare(bottom, other.bottom);
    return order != 0 ? order : Integer.compare(right, other.right);
  }
}
