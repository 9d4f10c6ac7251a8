package chinelog.book.page;

import java.util.List;

/** Makes up single pieces as the renderer does: paragraphs, tables, plates and what is one box. */
final class Placing {

  /** Lower than this below the head of its page, a heading is seen to stand too low. */
  private static final double LEAST_LOW_DOTS = 0.6 * Fitting.DOTS_PER_MM;

  /** Lifted wholly, it might be found on the page before. */
  private static final double SPARE_LOW_DOTS = 0.1 * Fitting.DOTS_PER_MM;

  /** The rule below a row stands half in the next. */
  private static final int ROW_SPARE_DOTS = 8;

  /** What faces another page is better parted from it by no leaf: as bad as a page half white. */
  private static final double OTHER_SIDE = 0.4;

  private final Guide guide;

  Placing(Guide guide) {
    this.guide = guide;
  }

  /**
   * Makes up a piece that is no stack, on the next page if it would be parted and is to be kept in
   * one.
   *
   * @param lift what it is lifted as if it begins a page
   */
  Laid place(Piece piece, Cursor given, Choice choice, String lift) {
    Cursor from = guide.asFound(piece.frame().id(), given);
    Laid laid = lay(piece, from, false, choice, lift);
    boolean isKept = piece.frame().breaks().isKept() && !choice.isParted();
    if (laid.isStranded() || isKept && laid.isParted()) {
      Laid next = lay(piece, from, true, choice, lift);
      boolean isTooHigh = !laid.isStranded() && isKept && laid.isParted() && next.isParted();
      laid = isTooHigh ? laid : next;
    }
    guide.note(piece, laid.start());
    return laid;
  }

  private Laid lay(Piece piece, Cursor from, boolean onNextPage, Choice choice, String lift) {
    Piece.Frame frame = piece.frame();
    Cursor at = upperEdge(piece, from, onNextPage, lift);
    int start = at.y;
    if (frame.is("verso") && !at.isVerso(at.pageAt(start))) {
      at.cost += OTHER_SIDE;
    }
    int lost = at.isAtTop() ? frame.lostAtHead() : 0;
    if (piece instanceof Piece.Solid solid) {
      return solid(solid, at, start - lost);
    }
    if (piece instanceof Piece.Single single) {
      return single(single, at, start - lost, choice);
    }
    at.y += frame.above() - lost;
    if (piece instanceof Piece.Lines lines) {
      return lines(lines, at, start);
    }
    if (piece instanceof Piece.Table table) {
      return table(table, at, start, lost, choice);
    }
    throw new IllegalStateException("not a single piece: " + piece);
  }

  /** Where the upper edge of a piece comes to stand. */
  Cursor upperEdge(Piece piece, Cursor from, boolean onNextPage, String lift) {
    Piece.Frame frame = piece.frame();
    Cursor at = from.copy();
    boolean hasNoRoom = at.y + frame.room() > at.bottom(at.pageAt(at.y));
    if (frame.breaks().isForcedBefore()) {
      at.beginPage();
    } else if (onNextPage || hasNoRoom) {
      at.toNextPage();
    }
    lift(frame, lift, at);
    return at;
  }

  /** Takes white away that was meant to part a piece from what is now on the page before. */
  private static void lift(Piece.Frame frame, String lift, Cursor at) {
    Integer firstTop = frame.firstTop();
    if (lift.isEmpty() || firstTop == null || at.isAtTop()) {
      return;
    }
    int number = at.pageAt(at.y);
    double low = at.y + firstTop - at.top(number);
    if (at.page < number && low > LEAST_LOW_DOTS && at.pageAt(at.y + firstTop) == number) {
      int by = (int) Math.round(low - SPARE_LOW_DOTS);
      at.y -= by;
      at.add(new Layout.Change(lift, Layout.Kind.LIFT, by / Fitting.DOTS_PER_MM), 0);
    }
  }

  private static Laid solid(Piece.Solid solid, Cursor at, int upper) {
    int start = at.y;
    Integer lastBottom = solid.lastBottom();
    if (lastBottom != null) {
      at.paint(upper + lastBottom);
    }
    at.y = upper + solid.height();
    Integer firstLine = solid.firstLineEnd();
    return new Laid(at, start, firstLine == null ? at.y : upper + firstLine, false);
  }

  private static Laid single(Piece.Single single, Cursor at, int upper, Choice choice) {
    int start = at.y;
    int height = choice.height(single);
    at.paint(upper + height - single.frame().below());
    at.y = upper + height;
    choice.take(single, at);
    return new Laid(at, start, at.y, false);
  }

  private static Laid lines(Piece.Lines lines, Cursor at, int start) {
    Cursor before = at.copy();
    int[] tops = new int[lines.lines().size()];
    set(lines, at, -1, tops);
    boolean isStranded = false;
    int count = tops.length;
    if (count > 1) {
      int first = at.pageAt(tops[0]);
      int onFirst = 0;
      while (onFirst < count && tops[onFirst] < at.bottom(first)) {
        onFirst++;
      }
      if (onFirst < count && onFirst < lines.orphans()) {
        isStranded = true;
      } else if (onFirst < count) {
        int last = at.pageAt(tops[count - 1]);
        int onLast = 0;
        while (onLast < count && tops[count - 1 - onLast] >= at.top(last)) {
          onLast++;
        }
        int breakAfter = count - 1 - lines.widows();
        if (onLast < lines.widows() && breakAfter < lines.orphans()) {
          isStranded = true;
        } else if (onLast < lines.widows()) {
          at = before;
          set(lines, at, breakAfter, tops);
        }
      }
    }
    int firstEnd = count == 0 ? at.y : tops[0] + lines.lines().get(0).height();
    at.y += lines.frame().below();
    return new Laid(at, start, firstEnd, isStranded);
  }

  /**
   * Sets lines one below the other.
   *
   * @param breakAt a line that is to begin a page; below 0 for none
   * @param tops filled with their upper edges
   */
  private static void set(Piece.Lines lines, Cursor at, int breakAt, int[] tops) {
    int y = at.y;
    List<Piece.Line> all = lines.lines();
    for (int i = 0; i < tops.length; i++) {
      Piece.Line line = all.get(i);
      y += line.gap();
      int number = at.pageAt(y);
      Cursor before = line.notes().isEmpty() ? at : at.copy();
      at.addNotes(number, line.notes());
      boolean isOver = y + line.paintBottom() >= at.bottom(number);
      if (isOver || breakAt > 0 && i == breakAt) {
        if (at != before) {
          at.takeNotes(before);
        }
        if ((y + line.paintTop()) != at.top(number)) {
          y = at.top(number + 1) - line.paintTop();
        }
        at.addNotes(at.pageAt(y), line.notes());
      }
      tops[i] = y;
      if (line.height() > 0) {
        at.paint(y + line.height());
      }
      y += line.height();
    }
    at.y = y;
  }

  /** Rows are not parted; where one does not fit, the head is repeated on the next page. */
  private Laid table(Piece.Table table, Cursor at, int start, int lost, Choice choice) {
    Integer firstLine = table.firstLineEnd();
    int firstEnd = firstLine == null ? at.y : start - lost + firstLine;
    boolean isStranded = false;
    at.y += table.head();
    for (int i = 0; i < table.rows().size(); i++) {
      Piece.Solid row = table.rows().get(i);
      if (at.y + row.height() + ROW_SPARE_DOTS >= at.bottom(at.pageAt(at.y))) {
        isStranded |= i == 0;
        at.toNextPage();
        at.y += table.head();
      }
      guide.note(row, at.y);
      Integer bottom = row.lastBottom();
      if (bottom != null) {
        at.paint(at.y + bottom);
      }
      at.y += row.height();
    }
    at.y += table.frame().below();
    choice.take(table, at);
    return new Laid(at, start, firstEnd, isStranded);
  }
}
