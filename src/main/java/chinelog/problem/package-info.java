/**
 * What is wrong with a log, where, and what to write instead: {@link chinelog.problem.Problem}.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.problem;

import org.jspecify.annotations.NullMarked;
