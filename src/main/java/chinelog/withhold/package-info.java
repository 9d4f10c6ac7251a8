/**
 * Makes editions: agreements, propagation, releases, derivability.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.withhold;

import org.jspecify.annotations.NullMarked;
