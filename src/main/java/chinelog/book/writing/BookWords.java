package chinelog.book.writing;

import chinelog.markup.Wording;
import chinelog.wording.Catalogue;
import java.time.LocalDate;
import java.util.Locale;
import java.util.MissingResourceException;

/**
 * The book's own words in the language of the log, English where there are none in it; what site
 * and book say alike comes from {@link Wording}.
 */
public record BookWords(Catalogue own, Wording shared) {

  /** Characters that the head of a page has room for. */
  private static final int IN_ONE_LINE = 64;

  public static BookWords of(Locale locale) {
    return new BookWords(Catalogue.of("chinelog.book.words", locale), Wording.of(locale));
  }

  /**
   * Such as {@code say("plate", 7)} for "Plate 7".
   *
   * @throws MissingResourceException if there is no such key
   */
  public String say(String key, Object... arguments) {
    return own.text(key, arguments);
  }

  /** A title for the head or the foot of a page, where it has one line. */
  static String shortened(String title) {
    if (title.codePointCount(0, title.length()) <= IN_ONE_LINE) {
      return title;
    }
    String start = title.substring(0, title.offsetByCodePoints(0, IN_ONE_LINE - 1));
    int space = start.lastIndexOf(' ');
    return (space > IN_ONE_LINE / 2 ? start.substring(0, space) : start) + "\u2026";
  }

  /** Such as "14 March 2026". */
  String date(LocalDate date) {
    return shared.date(date);
  }
}
