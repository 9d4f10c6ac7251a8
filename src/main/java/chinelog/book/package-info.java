/**
 * Renders an edition as printed matter (PDF): {@link chinelog.book.Press}.
 *
 * <p>The writers turn the edition into XHTML; {@code Printer} lays it out and paints it; what the
 * library leaves wrong is then mended: {@code ReadingOrder} the tags, {@code Finish} dates and
 * identity. Lengths are in millimetres unless a name says otherwise.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.book;

import org.jspecify.annotations.NullMarked;
