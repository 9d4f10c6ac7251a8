package chinelog.drawn;

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
