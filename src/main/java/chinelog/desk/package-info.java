/**
 * The log in the browser, on its maker's own machine. {@link Desk} is its face; {@code desk.web}
 * lets the browser in and nobody else, {@code desk.bench} holds what all pages share, and each page
 * has a package or a class of its own.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.desk;

import org.jspecify.annotations.NullMarked;
