package chinelog.drawn;

/** A place on a drawing: x to the right, y up, in units of the drawing. */
public record Spot(double x, double y) {

  public Spot up(double by) {
    return new Spot(x, y + by);
  }

  /**
   * The nearest place that can be told.
   *
   * @param steps how many there are to a unit
   */
  public Spot rounded(double steps) {
    return new Spot(Math.round(x * steps) / steps, Math.round(y * steps) / steps);
  }
}
