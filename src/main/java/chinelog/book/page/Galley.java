package chinelog.book.page;

import java.util.Map;

/**
 * The body of a book or booklet as it is on a page without end, from which pages are made up: all
 * heights are known, and no page ends yet.
 *
 * @param pageDots height of the text on a page
 * @param noteDots what the first note on a page takes beyond its own height
 * @param pagesBefore how many pages stand before the body
 * @param front pages, counted from the cover, of what stands before the body, by id
 */
record Galley(Piece body, int pageDots, int noteDots, int pagesBefore, Map<String, Integer> front) {

  /** The same, with so many pages before the body. */
  Galley after(int newPagesBefore) {
    return new Galley(body, pageDots, noteDots, newPagesBefore, front);
  }
}
