package chinelog.edition;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A captioned, numbered photograph.
 *
 * @param number from 1, counted over the edition
 * @param caption may be empty
 * @param alt what it shows, for those who cannot see it; never empty
 * @param date on which it was taken; null where unknown
 * @param stage id of the stage; empty where unknown
 * @param entry id of its entry; null if it is unplaced
 * @param under agreements, for editions whose readers see them all
 */
public record Plate(
    int number,
    Picture picture,
    List<Text.Run> caption,
    String alt,
    @Nullable LocalDate date,
    String stage,
    @Nullable String entry,
    List<String> under) {}
