package chinelog.drawn;

/** On which side of its place lettering stands. */
public enum Anchor {
  START,
  MIDDLE,
  END
}
