package chinelog.desk.files;

import java.util.Comparator;
import java.util.List;

/**
 * One piece of a text replaced by another, such as {@code [3, 5) -> "oak"}; all else stays.
 *
 * @param from first code unit that goes
 * @param to first code unit that stays; the same as {@code from} where something is only put in
 */
record Splice(int from, int to, String text) {

  public Splice {
    if (from < 0 || to < from) {
      throw new IllegalArgumentException("from " + from + " to " + to);
    }
  }

  /** A text put in before the code unit at {@code at}. */
  public static Splice insert(int at, String text) {
    return new Splice(at, at, text);
  }

  public static Splice delete(int from, int to) {
    return new Splice(from, to, "");
  }

  /**
   * A text after all of some splices, whose offsets are those before any of them.
   *
   * @throws IllegalArgumentException if two overlap or one reaches past the end
   */
  public static String apply(String text, List<Splice> splices) {
    StringBuilder out = new StringBuilder(text.length());
    int done = 0;
    for (Splice splice : splices.stream().sorted(Comparator.comparingInt(Splice::from)).toList()) {
      if (splice.from < done || splice.to > text.length()) {
        throw new IllegalArgumentException(splice + " after " + done + " of " + text.length());
      }
      out.append(text, done, splice.from).append(splice.text);
      done = splice.to;
    }
    return out.append(text, done, text.length()).toString();
  }
}
