package chinelog.wording;

/**
 * A fragment of what the program says, told apart from the others as it is worded: so nobody has to
 * look for figures or sources in a line.
 */
public record Fragment(Kind kind, String text) {

  /** What a fragment is. */
  public enum Kind {
    WORDS,
    /** Figures with their units, and the signs between them. */
    FIGURES,
    /** A book or rule that is followed, such as "Skene’s Elements of Yacht Design". */
    SOURCE
  }

  public static Fragment words(String text) {
    return new Fragment(Kind.WORDS, text);
  }

  public static Fragment figures(String text) {
    return new Fragment(Kind.FIGURES, text);
  }

  /** The fragment within its line: a source in brackets. */
  public String inLine() {
    return kind == Kind.SOURCE ? "(" + text + ")" : text;
  }
}
