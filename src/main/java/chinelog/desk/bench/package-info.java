/**
 * What all pages of the desk have in common: the log kept read ({@link LiveLog}), the frame that
 * pages are put into ({@link Frame}), and what a {@link DeskPage} is.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.desk.bench;

import org.jspecify.annotations.NullMarked;
