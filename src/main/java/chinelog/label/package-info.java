/**
 * Agreements, the labels that things under them carry, and who may see what: {@link
 * chinelog.label.Label}.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.label;

import org.jspecify.annotations.NullMarked;
