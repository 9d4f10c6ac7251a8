package chinelog.book.page;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** A part of the pages as it was measured on a page without end. Lengths are in dots. */
sealed interface Piece {

  Frame frame();

  /**
   * What every piece has.
   *
   * @param id empty for none
   * @param kind its classes
   * @param tag such as {@code h3}; empty for none
   * @param lift what it is lifted as if it begins a page; empty if it never is
   * @param marginTop part of {@code above}; the margins of two pieces that meet are the greater of
   *     them, and belong to the lower
   * @param marginAtHead what of it is left at the head of a page
   * @param ownTop the margin above that it wants, or what stands first in it
   * @param ownBottom the margin below that it wants, or what stands last in it
   * @param above from its upper edge to its content
   * @param below from the end of its content to its lower edge
   * @param firstTop from its upper edge to the first that is painted in it; null for nothing
   * @param room how much room it wants on the page that it begins on
   * @param ids of what stands in it, with the distances from its upper edge
   */
  record Frame(
      String id,
      String kind,
      String tag,
      String lift,
      int marginTop,
      int marginAtHead,
      int ownTop,
      int ownBottom,
      int above,
      int below,
      @Nullable Integer firstTop,
      int room,
      Breaks breaks,
      Map<String, Integer> ids) {

    /** The same, with so much between the end of its content and its lower edge. */
    Frame ending(int newBelow) {
      return new Frame(
          id,
          kind,
          tag,
          lift,
          marginTop,
          marginAtHead,
          ownTop,
          ownBottom,
          above,
          newBelow,
          firstTop,
          room,
          breaks,
          ids);
    }

    private Frame lower(int by) {
      Map<String, Integer> lowerIds = new TreeMap<>();
      ids.forEach((inner, place) -> lowerIds.put(inner, place + by));
      return new Frame(
          id,
          kind,
          tag,
          lift,
          marginTop + by,
          marginAtHead,
          ownTop,
          ownBottom,
          above + by,
          below,
          firstTop == null ? null : Integer.valueOf(firstTop + by),
          room,
          breaks,
          lowerIds);
    }

    /** How much less it has above it at the head of a page. */
    int lostAtHead() {
      return marginTop - marginAtHead;
    }

    boolean is(String name) {
      return List.of(kind.split(" ")).contains(name);
    }
  }

  /** Where pages may end. */
  record Breaks(
      boolean isForcedBefore, boolean isAvoidedBefore, boolean isAvoidedAfter, boolean isKept) {}

  /** Pieces one below the other. */
  record Stack(Frame frame, List<Piece> pieces) implements Piece {}

  /** A paragraph. */
  record Lines(Frame frame, List<Line> lines, int widows, int orphans) implements Piece {}

  /**
   * A line.
   *
   * @param gap between the line before and this one
   * @param paintTop how far it is painted above its upper edge; 0 or less
   * @param paintBottom from its upper edge to the end of what is painted
   * @param notes heights of the notes that it calls
   */
  record Line(int gap, int height, int paintTop, int paintBottom, List<Integer> notes) {}

  /**
   * What is never parted.
   *
   * @param height with its frame
   * @param firstLineEnd from its upper edge; null if it does not begin with a line
   * @param lastBottom from its upper edge to the end of the last that is painted in it; null for
   *     nothing
   */
  record Solid(
      Frame frame, int height, @Nullable Integer firstLineEnd, @Nullable Integer lastBottom)
      implements Piece {}

  /**
   * A table.
   *
   * @param head height of its head, which is repeated on each page
   */
  record Table(Frame frame, int head, @Nullable Integer firstLineEnd, List<Solid> rows)
      implements Piece {}

  /**
   * A plate alone in its row.
   *
   * @param height with its frame, at its usual size
   * @param picture height of the picture at its usual size
   * @param width of the picture at its usual size, as a part of the text's
   * @param caption height of the lines of the caption
   * @param captionRoom height of the caption with its margins, where it stands below
   * @param captionWidth width of the room that the caption is set in, as a part of the text's
   */
  record Single(
      Frame frame,
      int height,
      int picture,
      double width,
      int caption,
      int captionRoom,
      double captionWidth)
      implements Piece {}

  /** The same after another piece, so that its margin above is another. */
  default Piece withMargin(int marginTop) {
    int by = marginTop - frame().marginTop();
    if (by == 0) {
      return this;
    }
    Frame lower = frame().lower(by);
    if (this instanceof Stack stack) {
      return new Stack(lower, stack.pieces);
    }
    if (this instanceof Lines lines) {
      return new Lines(lower, lines.lines, lines.widows, lines.orphans);
    }
    if (this instanceof Solid solid) {
      return new Solid(
          lower, solid.height + by, sum(solid.firstLineEnd, by), sum(solid.lastBottom, by));
    }
    if (this instanceof Table table) {
      return new Table(lower, table.head, sum(table.firstLineEnd, by), table.rows);
    }
    Single single = (Single) this;
    return new Single(
        lower,
        single.height + by,
        single.picture,
        single.width,
        single.caption,
        single.captionRoom,
        single.captionWidth);
  }

  private static @Nullable Integer sum(@Nullable Integer one, int other) {
    return one == null ? null : Integer.valueOf(one + other);
  }

  default boolean isPlate() {
    return this instanceof Single || frame().kind().equals("row");
  }

  default boolean isGap() {
    return frame().kind().equals("gap");
  }
}
