/**
 * What the rooms of photographs share: files, their stamps, and work spread over the cores.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.photo;

import org.jspecify.annotations.NullMarked;
