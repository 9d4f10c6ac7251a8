/**
 * What one group of readers may see, as plain records: {@link chinelog.edition.Edition}.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.edition;

import org.jspecify.annotations.NullMarked;
