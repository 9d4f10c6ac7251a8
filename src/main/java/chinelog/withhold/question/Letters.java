package chinelog.withhold.question;

import java.text.Normalizer;
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

  private static final Pattern ACCENTS = Pattern.compile("\\p{M}");
  private static final Pattern WORD =
      Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N}\\p{M}\u00ad\u200b]*");
  private static final Pattern SENTENCE_END =
      Pattern.compile("(?:[.!?:…\"“”„«»(\\n\\f|]|^)[\\s)\"”»*_|-]*$");

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
    return all(text).stream().filter(w -> !JOINTS.contains(w.letters)).toList();
  }

  /** All words of a text. */
  static List<Word> all(String text) {
    List<Word> words = new ArrayList<>();
    Matcher m = WORD.matcher(text);
    while (m.find()) {
      int back = Math.max(0, m.start() - 12);
      String before = text.substring(back, m.start());
      boolean first = back == 0 && before.isBlank() || SENTENCE_END.matcher("x" + before).find();
      words.add(new Word(m.start(), m.end(), m.group(), fold(m.group()), first));
    }
    return words;
  }

  static String fold(String text) {
    String plain = text;
    if (!text.chars().allMatch(c -> c < 128)) {
      plain = ACCENTS.matcher(Normalizer.normalize(text, Normalizer.Form.NFKD)).replaceAll("");
      plain = plain.replace("ß", "ss").replace("æ", "ae").replace("ø", "o").replace("œ", "oe");
    }
    StringBuilder letters = new StringBuilder();
    plain.codePoints().filter(Character::isLetterOrDigit).forEach(letters::appendCodePoint);
    return letters.toString().toLowerCase(Locale.ROOT);
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
