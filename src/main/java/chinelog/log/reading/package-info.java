/**
 * What every reader of a file of the log stands on: the files of the folder ({@link
 * chinelog.log.reading.Inventory}), strict YAML with places, and keys and values read with a
 * message for each fault ({@link chinelog.log.reading.Fields}). For {@code chinelog.log} alone.
 */
@NullMarked
package chinelog.log.reading;

import org.jspecify.annotations.NullMarked;
