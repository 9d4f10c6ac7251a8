/**
 * Bringing photographs in from a card or a phone as verified copies.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.photo.gathering;

import org.jspecify.annotations.NullMarked;
