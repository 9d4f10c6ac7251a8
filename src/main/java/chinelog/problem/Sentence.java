package chinelog.problem;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A sentence of the program's own, written in English where it is needed and put into the log's
 * language when it is shown, such as {@code Sentence.of("There is no day {0}.", "2026-02-30")}. As
 * text it is English.
 *
 * <p>What has no translation in {@code chinelog/problem} is shown in English. A plain string in its
 * place is a sentence into which nothing is filled.
 *
 * @param english with {@code {0}}, {@code {1}} … for the parts; its own key among the translations
 * @param parts sentences, which are translated too, and texts that stand as they are
 */
public record Sentence(String english, List<CharSequence> parts) implements CharSequence {

  private static final Pattern PART = Pattern.compile("\\{([0-9])}");

  public Sentence {
    parts = List.copyOf(parts);
  }

  /** A sentence; a part that is no sentence stands as its text. */
  public static Sentence of(String english, @Nullable Object... parts) {
    return new Sentence(
        english,
        Arrays.stream(parts)
            .map(p -> p instanceof Sentence s ? s : (CharSequence) String.valueOf(p))
            .toList());
  }

  /** A text taken for a sentence, unless it is one. */
  public static Sentence of(CharSequence text) {
    return text instanceof Sentence sentence ? sentence : new Sentence(text.toString(), List.of());
  }

  /** In a language, or in English for want of a translation. */
  public String in(Locale locale) {
    String wording = Translations.of(locale).getOrDefault(english, english);
    return PART.matcher(wording)
        .replaceAll(
            place -> {
              int number = Integer.parseInt(place.group(1));
              return Matcher.quoteReplacement(
                  number < parts.size() ? part(parts.get(number), locale) : place.group());
            });
  }

  private static String part(CharSequence part, Locale locale) {
    return part instanceof Sentence sentence ? sentence.in(locale) : part.toString();
  }

  @Override
  public int length() {
    return toString().length();
  }

  @Override
  public char charAt(int index) {
    return toString().charAt(index);
  }

  @Override
  public CharSequence subSequence(int start, int end) {
    return toString().subSequence(start, end);
  }

  @Override
  public String toString() {
    return in(Locale.ENGLISH);
  }
}
