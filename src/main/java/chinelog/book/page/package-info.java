/**
 * Makes up pages and prints them: sizes and places of plates, page breaks, page numbers, marks and
 * tags. For {@code chinelog.book} alone.
 */
@NullMarked
package chinelog.book.page;

import org.jspecify.annotations.NullMarked;
