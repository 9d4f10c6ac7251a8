/**
 * Changes to the log's plain files: read with a stamp, altered by splices, written whole or not at
 * all, and taken back: {@link chinelog.desk.files.LogFiles}.
 *
 * <p>Offsets count UTF-16 code units from 0 in the text as it stands in the file, byte order mark
 * and line ends included. Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.desk.files;

import org.jspecify.annotations.NullMarked;
