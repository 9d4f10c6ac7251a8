package chinelog.markup;

import chinelog.wording.Catalogue;
import chinelog.wording.NaturalOrder;
import java.text.Collator;
import java.text.DecimalFormatSymbols;
import java.text.NumberFormat;
import java.time.LocalDate;
import java.time.format.FormatStyle;
import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.MissingResourceException;

/**
 * The words of site and book that are not the maker's, in the language of the log, such as {@code
 * text("nav.figures")}: {@code Figures}.
 *
 * <p>They stand in {@code wording.properties} (English) and {@code wording_LANGUAGE.properties};
 * what a language lacks is taken from English.
 */
public final class Wording {

  /** Of four digits none is set apart, as in figures. */
  private static final int FIRST_GROUPED = 10_000;

  private final Locale locale;
  private final Catalogue texts;

  private Wording(Locale locale, Catalogue texts) {
    this.locale = locale;
    this.texts = texts;
  }

  public static Wording of(Locale locale) {
    return new Wording(locale, Catalogue.of("chinelog.markup.wording", locale));
  }

  /**
   * The language that the words are in, for the attribute {@code lang}: {@code en} for want of own.
   */
  public String language() {
    return texts.language();
  }

  /**
   * A text, with {@code {0}}, {@code {1}} … replaced.
   *
   * @throws MissingResourceException if there is no text of that name
   */
  public String text(String key, Object... parts) {
    return texts.text(key, parts);
  }

  /** All texts, which stand on pages whatever the log says. */
  public Collection<String> all() {
    return texts.all();
  }

  /** A counted thing: {@code count("posts", 6)} is {@code 6 posts}. */
  public String count(String key, int number) {
    return text(key + (number == 1 ? ".one" : ".other"), number(number));
  }

  public String number(Number number) {
    NumberFormat format = NumberFormat.getNumberInstance(locale);
    format.setGroupingUsed(number.longValue() >= FIRST_GROUPED);
    return format.format(number);
  }

  /** The order of a language for titles: "Station 2" comes before "Station 10". */
  public static Comparator<String> order(Locale locale) {
    Collator collator = Collator.getInstance(locale);
    collator.setStrength(Collator.SECONDARY);
    return Comparator.comparing(NaturalOrder::key, collator::compare)
        .thenComparing(Comparator.naturalOrder());
  }

  /** The sign between whole numbers and decimals. */
  char decimalSign() {
    return DecimalFormatSymbols.getInstance(locale).getDecimalSeparator();
  }

  /** A date in full, such as {@code 14 March 2026}. */
  public String date(LocalDate date) {
    return texts.date(date);
  }

  /** A date in short, such as {@code 14 Mar 2026}. */
  public String shortDate(LocalDate date) {
    return Catalogue.date(date, FormatStyle.MEDIUM, locale);
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
