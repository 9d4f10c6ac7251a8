/**
 * Writes pictures as JPEG.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.jpeg;

import org.jspecify.annotations.NullMarked;
