/**
 * Reads CommonMark text with its marks, {@code {under=AGREEMENT}}, into the nodes of {@code
 * chinelog.log.text}: {@link chinelog.log.markdown.MarkdownReader}. For {@code chinelog.log} alone.
 */
@NullMarked
package chinelog.log.markdown;

import org.jspecify.annotations.NullMarked;
