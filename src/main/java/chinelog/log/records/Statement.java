package chinelog.log.records;

import chinelog.label.Label;
import chinelog.problem.Place;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A fact as facts.yaml states it: a quantity or a formula.
 *
 * @param name such as {@code hull.loa}
 * @param title in words, such as "Length over all"; empty if none was given
 * @param expression such as {@code 11.20 m ± 5 mm} or {@code full.loa / scale}
 * @param source where it was taken from, such as {@code sheets/lines.pdf}
 * @param expressionPlace where the expression begins
 */
public record Statement(
    String name,
    String title,
    String expression,
    @Nullable String source,
    @Nullable LocalDate date,
    Label label,
    Place place,
    Place expressionPlace) {}
