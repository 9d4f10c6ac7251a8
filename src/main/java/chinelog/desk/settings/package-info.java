/**
 * What log.yaml, facts.yaml and stock.yaml say, as forms: agreements, readers, releases, facts,
 * stock and limits.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.desk.settings;

import org.jspecify.annotations.NullMarked;
