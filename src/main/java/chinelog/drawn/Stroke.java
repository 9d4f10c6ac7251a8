package chinelog.drawn;

import java.util.List;

/** A line from point to point; a closed one goes back to its first. */
public record Stroke(LineUse line, boolean closed, List<Spot> points) {
  public Stroke {
    points = List.copyOf(points);
  }
}
