/**
 * What a log holds, as immutable records that keep the places where they were written: {@link
 * chinelog.log.records.Log}.
 */
@NullMarked
package chinelog.log.records;

import org.jspecify.annotations.NullMarked;
