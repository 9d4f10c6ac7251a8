/**
 * Photographs that show the same: near-duplicates, and drawings or withheld pictures within others.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.photo.likeness;

import org.jspecify.annotations.NullMarked;
