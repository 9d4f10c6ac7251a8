/**
 * Sets lines of type: faces, kerning, hyphens and where a line may end. For {@code chinelog.book}
 * alone.
 */
@NullMarked
package chinelog.book.setting;

import org.jspecify.annotations.NullMarked;
