package chinelog.book.writing;

import java.util.List;

/**
 * A part of a book that the contents and the bookmarks lead to.
 *
 * @param write writes it, heading and all
 * @param within what the contents list under it, written by it
 */
record BookSection(String id, String title, Runnable write, List<Entry> within) {

  /** A line of the contents. */
  record Entry(String id, String title) {}

  static BookSection of(String id, String title, Runnable write) {
    return new BookSection(id, title, write, List.of());
  }
}
