package chinelog.edition;

import chinelog.drawn.Anchor;
import chinelog.drawn.Ink;
import chinelog.drawn.Spot;
import java.util.List;

/**
 * A drawing made of lines, circles and lettering, {@value #WIDTH} units wide: x to the right, y up,
 * to a tenth of a unit.
 *
 * @param of name of the reckoning that drew it, with which its figures' names begin
 * @param height in the same units
 * @param shapes in the order they are drawn
 */
public record Diagram(
    String id,
    String of,
    String title,
    String description,
    double height,
    List<Shape> shapes,
    Table table,
    List<String> under)
    implements Drawing {

  public static final int WIDTH = 400;

  public Diagram {
    shapes = List.copyOf(shapes);
    under = List.copyOf(under);
  }

  /** Something drawn. */
  public sealed interface Shape permits Line, Disc, Note {}

  /** A line from point to point; a closed one goes back to its first and bounds a surface. */
  public record Line(Ink ink, boolean closed, List<Spot> points) implements Shape {
    public Line {
      points = List.copyOf(points);
    }
  }

  public record Disc(Ink ink, Spot at, double radius) implements Shape {}

  /**
   * Lettering.
   *
   * @param at on the line it stands on
   * @param quiet whether it is beside the matter
   */
  public record Note(String text, Spot at, Anchor anchor, boolean quiet) implements Shape {}
}
