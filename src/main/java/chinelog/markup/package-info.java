/**
 * HTML, themes and charts shared by site and book.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.markup;

import org.jspecify.annotations.NullMarked;
