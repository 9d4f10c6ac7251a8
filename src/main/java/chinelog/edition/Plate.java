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
 * @param parts what is named in it, in the order of their numbers
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
    List<Part> parts,
    List<String> under) {

  /**
   * A thing that is named in the photograph.
   *
   * @param x as a fraction (0 to 1) of its width, from the left
   * @param y as a fraction of its height, from the top
   */
  public record Part(double x, double y, String name) {}
}
