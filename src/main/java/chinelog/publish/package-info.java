/**
 * The pipeline from a log to published editions, its staging folder and its swap.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.publish;

import org.jspecify.annotations.NullMarked;
