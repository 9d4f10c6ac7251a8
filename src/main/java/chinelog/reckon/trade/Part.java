package chinelog.reckon.trade;

import chinelog.drawn.Spot;
import chinelog.drawn.Stroke;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.util.List;

/**
 * A part drawn at full size, such as the mould of a station. All lengths in mm, x to the right, y
 * up.
 *
 * @param name unique among those of a reckoning; lower case, {@code _} for spaces
 * @param title such as "Mould 4"
 */
public record Part(String name, Message title, List<Stroke> strokes, List<Lettering> letters) {

  public Part {
    strokes = List.copyOf(strokes);
    letters = List.copyOf(letters);
  }

  /**
   * Something written on a part.
   *
   * @param at where its first letter begins, on the line it stands on
   * @param height of its capitals, in mm
   */
  public record Lettering(Phrase text, Spot at, double height) {}
}
