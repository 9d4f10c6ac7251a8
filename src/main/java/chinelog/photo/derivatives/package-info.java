/**
 * The pictures that an edition shows, made from photographs and sheets and kept in the cache.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.photo.derivatives;

import org.jspecify.annotations.NullMarked;
