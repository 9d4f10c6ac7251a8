package chinelog.wording;

import chinelog.quantity.NumberStyle;
import chinelog.quantity.Quantity;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.ResourceBundle.Control;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The texts of one table in one language, such as those of {@code chinelog/reckon/messages};
 * English where the language has no table. In a text, {@code {0}}, {@code {1}} … are filled in; an
 * apostrophe is an apostrophe, unlike in {@link java.text.MessageFormat}. What stands in ⟨ ⟩ is a
 * source, and is shown in brackets.
 */
public final class Catalogue {

  private static final Pattern YEAR = Pattern.compile("[,\\s]*(?:\\bde )?\\b[0-9]{4}$");
  private static final Pattern PLACE = Pattern.compile("\\{([0-9])}|⟨([^⟩]*)⟩");

  private final Locale locale;
  private final ResourceBundle texts;
  private final int digits;

  private Catalogue(Locale locale, ResourceBundle texts, int digits) {
    this.locale = locale;
    this.texts = texts;
    this.digits = digits;
  }

  /**
   * The texts of a table.
   *
   * @param table such as {@code chinelog.reckon.messages}
   */
  public static Catalogue of(String table, Locale locale) {
    // Without the fallback to the language of the machine: it would make editions differ by it.
    Control control = Control.getNoFallbackControl(Control.FORMAT_PROPERTIES);
    return new Catalogue(locale, ResourceBundle.getBundle(table, locale, control), 0);
  }

  /**
   * The same texts with the figures in them to so many digits, for whoever reckons on with them.
   */
  public Catalogue toDigits(int many) {
    return new Catalogue(locale, texts, many);
  }

  /** A phrase in words; what is somebody's own stays as it is. */
  public String text(Phrase phrase) {
    return fragments(phrase).stream().map(Fragment::inLine).collect(Collectors.joining());
  }

  /** A phrase in words, its figures and sources apart from them. */
  public List<Fragment> fragments(Phrase phrase) {
    if (phrase instanceof Message message) {
      return filled(texts.getString(message.key()), message.arguments());
    }
    if (phrase instanceof Phrase.Joined joined) {
      return joined.parts().stream()
          .flatMap(
              part ->
                  part instanceof Phrase.Own sign
                      ? Stream.of(Fragment.sign(sign.text()))
                      : fragments(part).stream())
          .toList();
    }
    return List.of(
        phrase instanceof Phrase.Amount amount
            ? figure(amount.value())
            : phrase instanceof Phrase.Count count
                ? Fragment.figure(count.text(), "")
                : Fragment.words(((Phrase.Own) phrase).text()));
  }

  /** Several sentences in fragments, one after the other. */
  public List<Fragment> fragments(List<Message> sentences) {
    List<Fragment> fragments = new ArrayList<>();
    for (Message sentence : sentences) {
      if (!fragments.isEmpty()) {
        fragments.add(Fragment.words(" "));
      }
      fragments.addAll(fragments(sentence));
    }
    return fragments;
  }

  private Fragment figure(Quantity value) {
    NumberStyle style = new NumberStyle(locale, 0);
    String shown = digits == 0 ? style.show(value) : style.showToDigits(value, digits);
    return Fragment.figure(shown.replace('\u202f', ' '), style.unit(value));
  }

  /**
   * A text, such as {@code text("fullsize", "11.2 m")}.
   *
   * @throws MissingResourceException if the table has none of that key
   */
  public String text(String key, Object... arguments) {
    return text(Message.of(key, arguments));
  }

  /** The language of the texts, such as {@code de}: {@code en} for want of own ones. */
  public String language() {
    String language = texts.getLocale().getLanguage();
    return language.isEmpty() ? Locale.ENGLISH.getLanguage() : language;
  }

  /** All texts, with their places for what is filled in. */
  public List<String> all() {
    return texts.keySet().stream().sorted().map(key -> text(key)).toList();
  }

  /** The text of a key, if there is one. */
  public Optional<String> find(String key) {
    return texts.containsKey(key) ? Optional.of(texts.getString(key)) : Optional.empty();
  }

  /** A date in words, such as "4 April 2026". */
  public String date(LocalDate date) {
    return date(date, FormatStyle.LONG, locale);
  }

  /** A day with its weekday, such as "Saturday, 4 April"; with the year where that comes first. */
  public String weekday(LocalDate date) {
    String full = YEAR.matcher(date(date, FormatStyle.FULL, locale)).replaceFirst("");
    return full.substring(0, 1).toUpperCase(locale) + full.substring(1);
  }

  /** A date in words, of a length; in French the first of a month is the "1er". */
  public static String date(LocalDate date, FormatStyle length, Locale locale) {
    String shown = DateTimeFormatter.ofLocalizedDate(length).withLocale(locale).format(date);
    boolean isFrench = locale.getLanguage().equals(Locale.FRENCH.getLanguage());
    return isFrench ? shown.replaceFirst("(^|[^0-9])1 ", "$11er ") : shown;
  }

  private List<Fragment> filled(String text, List<Phrase> parts) {
    List<Fragment> fragments = new ArrayList<>();
    int from = 0;
    Matcher place = PLACE.matcher(text);
    while (place.find()) {
      fragments.add(Fragment.words(text.substring(from, place.start())));
      from = place.end();
      if (place.group(2) != null) {
        fragments.add(Fragment.source(place.group(2)));
      } else {
        int number = Integer.parseInt(place.group(1));
        // What nothing is given for is filled in by others, such as a script of the site.
        fragments.addAll(
            number < parts.size()
                ? fragments(parts.get(number))
                : List.of(Fragment.words(place.group())));
      }
    }
    fragments.add(Fragment.words(text.substring(from)));
    return fragments;
  }
}
