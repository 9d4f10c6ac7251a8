/**
 * Renders an edition as a static web site.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.site;

import org.jspecify.annotations.NullMarked;
