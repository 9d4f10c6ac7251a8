package chinelog.markup;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.NumberFormat;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Collection;
import java.util.Collections;
import java.util.Locale;
import java.util.Map;

/**
 * The words of site and book that are not the maker's, in the language of the log, such as {@code
 * text("nav.figures")}: {@code Figures}.
 *
 * <p>They stand in {@code wording.properties} (English) and {@code wording_LANGUAGE.properties};
 * what a language lacks is taken from English.
 */
public final class Wording {

  private final Locale locale;
  private final String language;
  private final Map<String, String> texts;

  private Wording(Locale locale, String language, Map<String, String> texts) {
    this.locale = locale;
    this.language = language;
    this.texts = texts;
  }

  public static Wording of(Locale locale) {
    try {
      Map<String, String> texts = Resources.properties(Resources.text(path("")));
      byte[] own = Resources.find(path("_" + locale.getLanguage()));
      if (own != null) {
        texts.putAll(Resources.properties(new String(own, StandardCharsets.UTF_8)));
      }
      return new Wording(locale, own == null ? "en" : locale.getLanguage(), texts);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String path(String suffix) {
    return "/chinelog/markup/wording" + suffix + ".properties";
  }

  /**
   * The language that the words are in, for the attribute {@code lang}: {@code en} for want of own.
   */
  public String language() {
    return language;
  }

  /**
   * A text, with {@code {0}}, {@code {1}} … replaced.
   *
   * @throws IllegalArgumentException if there is no text of that name
   */
  public String text(String key, String... parts) {
    String text = texts.get(key);
    if (text == null) {
      throw new IllegalArgumentException("no wording \"" + key + "\"");
    }
    for (int i = 0; i < parts.length; i++) {
      text = text.replace("{" + i + "}", parts[i]);
    }
    return text;
  }

  /** All texts, which stand on pages whatever the log says. */
  public Collection<String> all() {
    return Collections.unmodifiableCollection(texts.values());
  }

  /** A counted thing: {@code count("posts", 6)} is {@code 6 posts}. */
  public String count(String key, int number) {
    return text(key + (number == 1 ? ".one" : ".other"), number(number));
  }

  public String number(Number number) {
    return NumberFormat.getNumberInstance(locale).format(number);
  }

  /** A date in full, such as {@code 14 March 2026}. */
  public String date(LocalDate date) {
    return DateTimeFormatter.ofLocalizedDate(FormatStyle.LONG).withLocale(locale).format(date);
  }

  /** A date in short, such as {@code 14 Mar 2026}. */
  public String shortDate(LocalDate date) {
    return DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM).withLocale(locale).format(date);
  }

  /** The direction of writing, for the attribute {@code dir}: {@code ltr} or {@code rtl}. */
  public String direction() {
    String name = locale.getDisplayLanguage(locale);
    byte first = name.isEmpty() ? 0 : Character.getDirectionality(name.codePointAt(0));
    return first == Character.DIRECTIONALITY_RIGHT_TO_LEFT
            || first == Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC
        ? "rtl"
        : "ltr";
  }
}
