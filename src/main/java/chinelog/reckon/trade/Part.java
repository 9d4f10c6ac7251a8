package chinelog.reckon.trade;

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

  /** What a line is for. */
  public enum Line {
    /** To be cut along. */
    CUT,
    /** To be carried over to the part: waterlines, stations. */
    SCORE,
    /** A line of symmetry, carried over too. */
    CENTRE,
    /** For the eye alone. */
    GUIDE
  }

  /** A place on the drawing, in mm. */
  public record Point(double x, double y) {}

  /** A line from point to point; a closed one goes back to its first. */
  public record Stroke(Line line, boolean closed, List<Point> points) {
    public Stroke {
      points = List.copyOf(points);
    }
  }

  /**
   * Something written on a part.
   *
   * @param at where its first letter begins, on the line it stands on
   * @param height of its capitals, in mm
   */
  public record Lettering(Phrase text, Point at, double height) {}
}
