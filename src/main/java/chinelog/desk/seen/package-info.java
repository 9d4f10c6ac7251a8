/**
 * The log as readers see it: the pages of their editions, made as publishing makes them and written
 * nowhere.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.desk.seen;

import org.jspecify.annotations.NullMarked;
