package chinelog.withhold.question;

import chinelog.wording.Accents;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Text reduced to its letters and digits, in lower case and without accents, so that spellings can
 * be compared.
 */
final class Letters {

  private static final Pattern WORD =
      Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N}\\p{M}\u00ad\u200b]*");
  private static final String ENDS_SENTENCE = ".!?:…\"“”„«»(\n\f|";

  /** May stand between the end of a sentence and the next word. */
  private static final String BETWEEN = " \t\n\u000b\f\r)\"”»*_|-";

  /** Ends of lines that are no blanks to Java; one may stand right before the next word. */
  private static final String LINE_ENDS = "\u0085\u2028\u2029";

  /** How far back from a word the end of a sentence is looked for, in UTF-16 code units. */
  private static final int BACK = 12;

  /** Words that join the parts of a name, in the languages of a log. */
  private static final Set<String> JOINTS =
      Set.of(
          "and", "und", "en", "et", "y", "e", "of", "the", "der", "die", "das", "des", "dem", "de",
          "het", "la", "le", "les", "el", "los", "las", "du", "del", "van", "von", "for", "fur",
          "s", "voor", "pour", "para", "a", "an");

  private Letters() {}

  /**
   * A word of a text.
   *
   * @param letters folded
   * @param first whether a sentence begins with it, so that its capital tells nothing
   */
  record Word(int start, int end, String written, String letters, boolean first) {
    boolean hasCapital() {
      return Character.isUpperCase(written.codePointAt(0));
    }
  }

  /** Words but for those that only join others. */
  static List<Word> words(String text) {
    return withoutJoints(all(text));
  }

  static List<Word> withoutJoints(List<Word> words) {
    return words.stream().filter(w -> !JOINTS.contains(w.letters)).toList();
  }

  /** All words of a text. */
  static List<Word> all(String text) {
    List<Word> words = new ArrayList<>();
    Matcher m = WORD.matcher(text);
    while (m.find()) {
      String word = m.group();
      words.add(new Word(m.start(), m.end(), word, fold(word), isFirst(text, m.start())));
    }
    return words;
  }

  private static boolean isFirst(String text, int start) {
    int back = Math.max(0, start - BACK);
    if (back == 0 && text.substring(0, start).isBlank()) {
      return true;
    }
    int at = start - 1;
    if (at >= back && LINE_ENDS.indexOf(text.charAt(at)) >= 0) {
      at--;
    }
    while (at >= back) {
      char c = text.charAt(at);
      if (ENDS_SENTENCE.indexOf(c) >= 0) {
        return true;
      }
      if (BETWEEN.indexOf(c) < 0) {
        return false;
      }
      at--;
    }
    return false;
  }

  static String fold(String text) {
    boolean ascii = true;
    boolean letters = true;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      ascii &= c < 128;
      letters &= Character.isLetterOrDigit(c);
    }
    if (ascii && letters) {
      return text.toLowerCase(Locale.ROOT);
    }
    String plain = text;
    if (!ascii) {
      plain =
          Accents.off(text)
              .replace("ß", "ss")
              .replace("æ", "ae")
              .replace("ø", "o")
              .replace("œ", "oe");
    }
    StringBuilder left = new StringBuilder();
    plain.codePoints().filter(Character::isLetterOrDigit).forEach(left::appendCodePoint);
    return left.toString().toLowerCase(Locale.ROOT);
  }

  /** The sentence around a place in a text, from which a reader learns what is meant. */
  static String sentence(String text, int start, int end) {
    int from = start;
    while (from > 0 && start - from < 200 && !isEnd(text, from - 1)) {
      from--;
    }
    int to = end;
    while (to < text.length() && to - end < 200 && !isEnd(text, to)) {
      to++;
    }
    return text.substring(from, to);
  }

  private static boolean isEnd(String text, int at) {
    char c = text.charAt(at);
    if (c == '\n') {
      return true;
    }
    return (c == '.' || c == '!' || c == '?')
        && (at + 1 >= text.length() || Character.isWhitespace(text.charAt(at + 1)));
  }
}
