package chinelog.log.records;

import chinelog.label.Label;
import chinelog.log.text.Block;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A phase of the build, such as planking.
 *
 * @param id the word entries use, such as {@code planking}
 * @param about what the stage is for
 * @param start planned first day
 * @param finish planned last day, inclusive
 * @param hours planned hours
 */
public record Stage(
    String id,
    String title,
    List<Block> about,
    @Nullable LocalDate start,
    @Nullable LocalDate finish,
    @Nullable Quantity hours,
    Label label,
    Place place) {}
