/**
 * The photographs of a log: what their files tell, and the entry that each belongs to.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.photo.album;

import org.jspecify.annotations.NullMarked;
