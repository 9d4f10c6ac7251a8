/**
 * Metadata, matching and derivatives of photographs.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.photo;

import org.jspecify.annotations.NullMarked;
