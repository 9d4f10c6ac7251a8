package chinelog.reckon;

/** Where a fact comes from. */
public enum Origin {
  STATED,
  MEASURED,
  WEIGHED,
  COUNTED,
  RECKONED
}
