/**
 * Publishing from the desk: the run itself with its progress, and what stands published.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.desk.publishing;

import org.jspecify.annotations.NullMarked;
