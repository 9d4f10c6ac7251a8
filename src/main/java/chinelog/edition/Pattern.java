package chinelog.edition;

import chinelog.drawn.Spot;
import chinelog.drawn.Stroke;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An outline at full size, to cut by. All lengths in mm, x to the right, y up, given to a hundredth
 * of a millimetre.
 *
 * @param id unique, fit for a file's name
 * @param under names of the agreements that its readers are party to
 * @param scan a drawing that lies under the strokes, its corner at 0, 0; null for none
 */
public record Pattern(
    String id,
    String title,
    List<Stroke> strokes,
    List<Note> notes,
    List<String> under,
    @Nullable Scan scan) {

  public Pattern {
    strokes = List.copyOf(strokes);
    notes = List.copyOf(notes);
    under = List.copyOf(under);
  }

  /** A drawing as it was sent, at the size that was reckoned for it. */
  public record Scan(Picture picture, double widthMm, double heightMm) {}

  /**
   * Lettering.
   *
   * @param at where its first letter begins, on the line it stands on
   * @param height of its capitals
   */
  public record Note(String text, Spot at, double height) {}
}
