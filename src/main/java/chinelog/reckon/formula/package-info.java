/**
 * Formulas: arithmetic on quantities with units, read ({@link chinelog.reckon.formula.Formula}),
 * evaluated and written again.
 */
@NullMarked
package chinelog.reckon.formula;

import org.jspecify.annotations.NullMarked;
