/**
 * Numbers with units and tolerances, such as '1.19 m ± 2 mm': {@link chinelog.quantity.Quantity}.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.quantity;

import org.jspecify.annotations.NullMarked;
