package chinelog.reckon;

/**
 * Something that decides a figure without being one of its inputs.
 *
 * @param material empty for what is of none or of all
 */
public record Influence(Kind kind, String material) {

  static final Influence ENTRIES = new Influence(Kind.ENTRIES, "");
  static final Influence WEIGHINGS = new Influence(Kind.WEIGHINGS, "");
  static final Influence ALL_LOTS_IN_TURN = new Influence(Kind.ALL_LOTS_IN_TURN, "");

  /** What it is that decides. */
  public enum Kind {
    /** Which sum an entry counts in is part of the entry. */
    ENTRIES,
    /** All weighings of all parts. */
    WEIGHINGS,
    /** The lots of a material. */
    LOTS,
    /** All that was used of a material. */
    USES,
    /** What was taken before decides from which of several lots the next is taken. */
    LOTS_IN_TURN,
    /** The same for every material. */
    ALL_LOTS_IN_TURN
  }

  static Influence lots(String material) {
    return new Influence(Kind.LOTS, material);
  }

  static Influence uses(String material) {
    return new Influence(Kind.USES, material);
  }

  static Influence lotsInTurn(String material) {
    return new Influence(Kind.LOTS_IN_TURN, material);
  }
}
