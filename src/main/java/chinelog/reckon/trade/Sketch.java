package chinelog.reckon.trade;

import chinelog.drawn.Anchor;
import chinelog.drawn.Ink;
import chinelog.drawn.Spot;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.util.List;

/**
 * A drawing to look at and not to cut by, such as a lines plan, {@value #WIDTH} units wide: x to
 * the right, y up.
 *
 * @param name unique among those of a reckoning; lower case
 * @param description what it shows, for those who cannot see it
 * @param height in the same units
 * @param head of the table that says the same
 * @param rows of that table, each as long as its head
 * @param isKeyed whether the drawing cannot be read without that table
 */
public record Sketch(
    String name,
    Message title,
    Message description,
    double height,
    List<Shape> shapes,
    List<Phrase> head,
    List<List<Phrase>> rows,
    boolean isKeyed) {

  public static final int WIDTH = 400;

  public Sketch {
    shapes = List.copyOf(shapes);
    head = List.copyOf(head);
    rows = rows.stream().map(List::copyOf).toList();
  }

  /** Something drawn. */
  public sealed interface Shape permits Line, Disc, Note, Strip {}

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
  public record Note(Phrase text, Spot at, Anchor anchor, boolean quiet) implements Shape {}

  /**
   * A strip of planking, which is laid once so many are.
   *
   * @param turn in which it is laid, from 1
   */
  public record Strip(int turn, List<Spot> points) implements Shape {
    public Strip {
      points = List.copyOf(points);
    }
  }
}
