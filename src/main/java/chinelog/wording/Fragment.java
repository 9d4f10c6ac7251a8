package chinelog.wording;

/**
 * A fragment of what the program says, told apart from the others as it is worded: so nobody has to
 * look for figures or sources in a line.
 *
 * @param unit with which a figure ends, such as "mm"; empty if it has none, as money and all else
 */
public record Fragment(Kind kind, String text, String unit) {

  /** What a fragment is. */
  public enum Kind {
    WORDS,
    /** One number with its unit. */
    FIGURE,
    /** What stands before, between and behind figures that are put in, such as " × ". */
    SIGN,
    /** What a figure may be off by, such as " ± 2 mm". */
    TOLERANCE,
    /** A book or rule that is followed, such as "Skene’s Elements of Yacht Design". */
    SOURCE
  }

  private static final String OPERATORS = "+−×÷√";

  public static Fragment words(String text) {
    return new Fragment(Kind.WORDS, text, "");
  }

  /**
   * A number with its unit.
   *
   * @param unit left out where the number does not end with it
   */
  public static Fragment figure(String text, String unit) {
    return new Fragment(Kind.FIGURE, text, text.endsWith(unit) ? unit : "");
  }

  public static Fragment sign(String text) {
    return new Fragment(Kind.SIGN, text, "");
  }

  public static Fragment source(String text) {
    return new Fragment(Kind.SOURCE, text, "");
  }

  /** The figure without its unit. */
  public String number() {
    int end = text.length() - unit.length();
    while (end > 0 && Character.isSpaceChar(text.charAt(end - 1))) {
      end--;
    }
    return text.substring(0, end);
  }

  /** Whether figures are put together by it, and not listed. */
  public boolean isOperator() {
    return kind == Kind.SIGN && text.chars().anyMatch(c -> OPERATORS.indexOf(c) >= 0);
  }

  /** The fragment within its line: a source in brackets. */
  public String inLine() {
    return kind == Kind.SOURCE ? "(" + text + ")" : text;
  }
}
