package chinelog.book.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Pieces of a stack made up so far, in one of the ways in which that can be done.
 *
 * @param at where the next piece begins
 * @param in the stack, as this way came to it
 * @param last the last piece; null at the beginning
 * @param run the last pieces that stay together; null at the beginning
 * @param lastPlate id of the plate that is the last piece; empty if it is none
 * @param firstEnd the end of the first line of the first piece
 * @param margin that the last piece wants below
 */
record Way(
    Cursor at,
    Opened in,
    @Nullable Piece last,
    @Nullable Run run,
    List<Waiting> waiting,
    String lastPlate,
    int firstEnd,
    int margin) {

  static final Comparator<Way> CHEAPEST = Comparator.comparingDouble(Way::price);

  /**
   * A stack that is being made up.
   *
   * @param before the pieces that come before it in the stack around it; null for the outermost
   * @param chosen the stack as it was chosen; null for the outermost
   * @param start its upper edge
   * @param key what of the way so far decides how it can go on after the stack
   */
  record Opened(@Nullable Way before, @Nullable Chosen chosen, int start, String key) {}

  /** A piece, what is done with it, and what it is lifted as. */
  record Chosen(Piece piece, Choice choice, String lift) {}

  /** Pieces that stay together, from the last before which a page may end. */
  record Run(Cursor before, int start, boolean isFirst, List<Chosen> pieces) {

    Run with(Chosen chosen) {
      List<Chosen> all = new ArrayList<>(pieces);
      all.add(chosen);
      return new Run(before, start, isFirst, List.copyOf(all));
    }
  }

  /** Plates with the number of paragraphs that come before them still. */
  record Waiting(List<Piece> plates, int later) {}

  /** The beginning of a stack. */
  static Way into(Cursor at, Opened stack) {
    return new Way(at, stack, null, null, List.of(), "", at.y, 0);
  }

  Way waitingFor(List<Waiting> newWaiting, Cursor newAt) {
    return new Way(newAt, in, last, run, List.copyOf(newWaiting), lastPlate, firstEnd, margin);
  }

  /** Whether a page may not end between the last piece and another. */
  boolean staysWith(Piece next) {
    return last != null
        && run != null
        && !next.frame().breaks().isForcedBefore()
        && (last.frame().breaks().isAvoidedAfter() || next.frame().breaks().isAvoidedBefore());
  }

  /** The margin below a piece; what has no height hands on that of what stands before it. */
  int marginBelow(Laid laid, Piece piece) {
    int own = piece.frame().ownBottom();
    boolean isEmpty = laid.end().y == laid.start();
    return isEmpty ? Math.max(margin, own) : own;
  }

  /** The white so far, with what was taken for what was done about it. */
  double price() {
    return at.cost + at.whiteUntil(at.pageAt(at.y));
  }

  /** What waits, as a part of a key. */
  String waitingKey() {
    if (waiting.isEmpty()) {
      return "";
    }
    StringBuilder key = new StringBuilder();
    for (Waiting one : waiting) {
      List<Piece> plates = one.plates;
      key.append(one.later).append(plates.get(plates.size() - 1).frame().id()).append(' ');
    }
    return key.toString();
  }
}
