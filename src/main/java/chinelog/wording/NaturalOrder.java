package chinelog.wording;

import java.util.regex.Pattern;

/** The order in which numbers within texts count as numbers: "Station 2" before "Station 10". */
public final class NaturalOrder {

  private static final Pattern NUMBER = Pattern.compile("[0-9]+");
  private static final int LENGTH = 9;

  private NaturalOrder() {}

  /** A text with its numbers filled up to one length, to be compared letter by letter. */
  public static String key(String text) {
    return NUMBER
        .matcher(text)
        .replaceAll(n -> "0".repeat(Math.max(0, LENGTH - n.group().length())) + n.group());
  }
}
