package chinelog.drawn;

/** What a line of a pattern is for. */
public enum LineUse {
  /** To be cut along. */
  CUT,
  /** To be carried over to the part: waterlines, stations. */
  SCORE,
  /** A line of symmetry, carried over too. */
  CENTRE,
  /** For the eye alone. */
  GUIDE
}
