/**
 * The command line; the only place that talks to the console.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.cli;

import org.jspecify.annotations.NullMarked;
