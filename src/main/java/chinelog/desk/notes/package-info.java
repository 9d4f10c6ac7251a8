/**
 * The notes of the log: their list and calendar, and the editor in which one is written, marked and
 * seen as its readers will see it.
 *
 * <p>Texts travel between browser and desk with {@code \n} at the ends of lines; a file keeps its
 * own. Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.desk.notes;

import org.jspecify.annotations.NullMarked;
