/**
 * What drawings are made of: places, lines and what they stand for. Those who draw and those who
 * show what was drawn share it; it names nothing of a log.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.drawn;

import org.jspecify.annotations.NullMarked;
