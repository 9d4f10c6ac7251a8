package chinelog.label;

/** What readers see in the place of a thing withheld from them. */
public enum Presence {
  /** A fixed, neutral note that something is withheld. */
  NOTE,
  /** Nothing at all, as if it had never been. */
  NOTHING
}
