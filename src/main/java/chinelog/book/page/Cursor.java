package chinelog.book.page;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How far the pages are made up, and how white they have come out. Heights are in dots from the
 * head of the first page; a page ends where the next begins.
 */
final class Cursor {

  /** A page with more white at its foot looks empty before long. */
  private static final double SEEN = 1 / 5.0;

  /** Where a chapter ends, more is usual. */
  private static final double SEEN_AT_END = 1 / 2.0;

  final int pageDots;
  final int noteDots;

  /** Where the next piece begins. */
  int y;

  /** Of the pages before the last, with what was taken for what was done about it. */
  double cost;

  /** The last page on which something is painted, and how far down that goes. */
  int page;

  int filled;

  /** The last page with notes, and their height. */
  private int notesPage = -1;

  private int notes;

  /** What was done, the last of it first. */
  @Nullable Done done;

  /** A change with those before it. */
  record Done(Layout.Change change, @Nullable Done before) {}

  Cursor(int pageDots, int noteDots) {
    this.pageDots = pageDots;
    this.noteDots = noteDots;
  }

  private Cursor(Cursor other) {
    pageDots = other.pageDots;
    noteDots = other.noteDots;
    y = other.y;
    cost = other.cost;
    page = other.page;
    filled = other.filled;
    notesPage = other.notesPage;
    notes = other.notes;
    done = other.done;
  }

  Cursor copy() {
    return new Cursor(this);
  }

  /**
   * The square of the part of a page that is left white at its foot, a quarter of it where a
   * chapter ends; what is beyond the part from which on a page is seen to be empty counts as well.
   */
  static double white(double height, double filled, boolean isEnd) {
    double left = Math.max(0, height - filled) / height;
    return isEnd
        ? left * left / 4 + Math.max(0, left - SEEN_AT_END)
        : left * left + Math.max(0, left - SEEN);
  }

  int pageAt(int place) {
    return place / pageDots;
  }

  /** Whether a page is a left one; the first is not. */
  boolean isVerso(int number) {
    return number % 2 == 1;
  }

  int top(int number) {
    return number * pageDots;
  }

  /** Where the text of a page must end at the latest. */
  int bottom(int number) {
    return (number + 1) * pageDots - notesOn(number);
  }

  int notesOn(int number) {
    return number == notesPage ? notes : 0;
  }

  boolean isAtTop() {
    return y % pageDots == 0;
  }

  void toNextPage() {
    if (!isAtTop()) {
      y = top(pageAt(y) + 1);
    }
  }

  /** Begins a page because something is to begin one, such as a chapter. */
  void beginPage() {
    toNextPage();
    int number = pageAt(y);
    if (number > page) {
      cost += whiteUntil(number, true);
      page = number;
      filled = 0;
    }
  }

  void addNotes(int number, List<Integer> heights) {
    for (int height : heights) {
      notes = (number == notesPage ? notes : noteDots) + height;
      notesPage = number;
    }
  }

  /** Restores the notes as they are at another cursor. */
  void takeNotes(Cursor from) {
    notes = from.notes;
    notesPage = from.notesPage;
  }

  /** Notes that something is painted down to a place. */
  void paint(int bottom) {
    int number = pageAt(bottom - 1);
    if (number > page) {
      cost += whiteUntil(number);
      page = number;
      filled = 0;
    }
    if (number == page) {
      filled = Math.max(filled, bottom - top(number));
    }
  }

  /** The white of the last page on which something is painted, and of those up to another. */
  double whiteUntil(int end) {
    return whiteUntil(end, false);
  }

  private double whiteUntil(int end, boolean isEnd) {
    if (end <= page) {
      return 0;
    }
    return white(pageDots - notesOn(page), filled, isEnd) + (end - page - 1) * white(1, 0, isEnd);
  }

  /** With the white of all pages, the last among them. */
  double costOfAll() {
    return cost + whiteUntil(page + 1, true);
  }

  void add(Layout.Change change, double price) {
    done = new Done(change, done);
    cost += price;
  }
}
