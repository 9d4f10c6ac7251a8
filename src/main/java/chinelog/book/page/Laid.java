package chinelog.book.page;

/**
 * A piece made up.
 *
 * @param end where the next begins
 * @param start its upper edge
 * @param firstEnd the end of its first line
 * @param isStranded whether it wants to begin on the next page, for want of lines on this one
 */
record Laid(Cursor end, int start, int firstEnd, boolean isStranded) {

  /** Whether it ends on another page than it begins on. */
  boolean isParted() {
    return end.y >= end.bottom(end.pageAt(start));
  }
}
