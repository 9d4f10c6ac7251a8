/**
 * The first run: three questions and a first note make a log.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.desk.begin;

import org.jspecify.annotations.NullMarked;
