/**
 * Places rectangles on sheets: patterns on paper, and parts on the stock that they are cut from.
 */
@NullMarked
package chinelog.nesting;

import org.jspecify.annotations.NullMarked;
