/**
 * The text of a note once it is parsed: {@link chinelog.log.text.Block}s made of {@link
 * chinelog.log.text.Inline} runs, with their marks and places.
 */
@NullMarked
package chinelog.log.text;

import org.jspecify.annotations.NullMarked;
