package chinelog.wording;

import java.text.Normalizer;
import java.util.regex.Pattern;

/** Takes the accents off letters. */
public final class Accents {

  private static final Pattern MARKS = Pattern.compile("\\p{M}");

  private Accents() {}

  /**
   * A text without accents, its ligatures and wide letters taken apart, such as {@code Cafe fin} of
   * {@code Café ﬁn}.
   */
  public static String off(String text) {
    return text.chars().allMatch(c -> c < 128)
        ? text
        : MARKS.matcher(Normalizer.normalize(text, Normalizer.Form.NFKD)).replaceAll("");
  }
}
