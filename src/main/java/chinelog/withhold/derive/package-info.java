/**
 * Finds out whether the figures an edition prints give away one that it withholds: {@link
 * chinelog.withhold.derive.Derivability}.
 *
 * <p>Numbers are doubles in coherent SI units throughout. Nothing here is ever null unless marked
 * {@code @Nullable}.
 */
@NullMarked
package chinelog.withhold.derive;

import org.jspecify.annotations.NullMarked;
