/**
 * Writes an edition as XHTML for print: {@link chinelog.book.writing.BuildBook} and {@link
 * chinelog.book.writing.HandoverBooklet}. For {@code chinelog.book} alone.
 */
@NullMarked
package chinelog.book.writing;

import org.jspecify.annotations.NullMarked;
