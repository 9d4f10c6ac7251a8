/**
 * The trade's own reckonings, from a table of offsets to a quotation: {@link
 * chinelog.reckon.trade.TradeReckonings} finds them by name.
 *
 * <p>Pure computations: nothing here reads a file or a clock. Quantities carry their units at the
 * face; inside, numbers are {@code double} in SI units (m, kg, s, rad). Nothing here is ever null
 * unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.reckon.trade;

import org.jspecify.annotations.NullMarked;
