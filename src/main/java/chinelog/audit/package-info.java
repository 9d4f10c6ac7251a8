/**
 * Searches the written bytes of an edition for what it must not hold: {@link chinelog.audit.Audit}.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.audit;

import org.jspecify.annotations.NullMarked;
