package chinelog.log.records;

import chinelog.label.Label;
import chinelog.problem.Place;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One instalment of the series.
 *
 * @param title of the post
 * @param standfirst one or two sentences that lead in; may be empty
 * @param entries ids, in the order told
 * @param opening path of the plate it opens with
 */
public record PostPlan(
    String title,
    String standfirst,
    List<String> entries,
    @Nullable String opening,
    Label label,
    Place place) {}
