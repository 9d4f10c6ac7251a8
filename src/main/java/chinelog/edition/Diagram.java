package chinelog.edition;

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

  /** What a line or a surface stands for. */
  public enum Ink {
    /** An outline of the hull. */
    HULL,
    /** A line for the eye: a station, a waterline, a grid. */
    FINE,
    /** A line of symmetry or an axis. */
    CENTRE,
    /** Where the water lies. */
    WATER,
    /** A curve of figures. */
    CURVE,
    /** A surface below such a curve. */
    AREA,
    /** A sail. */
    SAIL,
    /** A mass, or the centre of one. */
    WEIGHT,
    /** A centre that the drawing is about. */
    CENTROID,
    /** From a letter to what it names. */
    POINTER,
    /** A layer or strip that is there, by turns with the next. */
    DONE,
    DONE_NEXT,
    /** One that is still to come. */
    COMING
  }

  /** On which side of its place lettering stands. */
  public enum Anchor {
    START,
    MIDDLE,
    END
  }

  public record Point(double x, double y) {}

  /** Something drawn. */
  public sealed interface Shape permits Line, Disc, Note {}

  /** A line from point to point; a closed one goes back to its first and bounds a surface. */
  public record Line(Ink ink, boolean closed, List<Point> points) implements Shape {
    public Line {
      points = List.copyOf(points);
    }
  }

  public record Disc(Ink ink, Point at, double radius) implements Shape {}

  /**
   * Lettering.
   *
   * @param at on the line it stands on
   * @param quiet whether it is beside the matter
   */
  public record Note(String text, Point at, Anchor anchor, boolean quiet) implements Shape {}
}
