/**
 * The patterns of an edition at full size: {@link chinelog.pattern.PatternWriter} writes one PDF
 * for the maker's own printer, and a drawing for a cutter for each part.
 *
 * <p>All lengths are in mm, x to the right, y up. Nothing is null unless marked so.
 */
@NullMarked
package chinelog.pattern;

import org.jspecify.annotations.NullMarked;
