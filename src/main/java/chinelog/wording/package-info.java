/**
 * What the program words itself, in one language of several: {@link chinelog.wording.Message} says
 * what, {@link chinelog.wording.Catalogue} puts it into words when it is shown.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.wording;

import org.jspecify.annotations.NullMarked;
