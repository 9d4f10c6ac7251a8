package chinelog.book.page;

/**
 * The body of a book or booklet as it is on a page without end, from which pages are made up: all
 * heights are known, and no page ends yet.
 *
 * @param pageDots height of the text on a page
 * @param noteDots what the first note on a page takes beyond its own height
 * @param pagesBefore how many pages stand before the body
 */
record Galley(Piece body, int pageDots, int noteDots, int pagesBefore) {}
