/**
 * Pages of the desk.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.desk.pages;

import org.jspecify.annotations.NullMarked;
