/**
 * The desk's page of sheets: brought to scale by clicks, measured, and a table of offsets taken off
 * the body plan: {@link chinelog.desk.sheets.Sheets}.
 *
 * <p>Points are in pixels of the picture shown, from its left top corner. Nothing here is ever null
 * unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.desk.sheets;

import org.jspecify.annotations.NullMarked;
