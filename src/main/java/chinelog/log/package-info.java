/**
 * Reads the folder of one build into immutable records that keep their places: {@link
 * chinelog.log.LogReader}.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.log;

import org.jspecify.annotations.NullMarked;
