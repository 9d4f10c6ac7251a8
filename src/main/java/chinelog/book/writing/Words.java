package chinelog.book.writing;

import chinelog.markup.Wording;
import java.time.LocalDate;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import java.util.ResourceBundle.Control;

/**
 * The book's own words in the language of the log, English where there are none in it; what site
 * and book say alike comes from {@link Wording}.
 */
public final class Words {

  /** Characters that the head of a page has room for. */
  private static final int IN_ONE_LINE = 64;

  private final ResourceBundle own;
  private final Wording shared;

  private Words(ResourceBundle own, Wording shared) {
    this.own = own;
    this.shared = shared;
  }

  public static Words of(Locale locale) {
    // Without the fallback to the language of the machine: it would make editions differ by it.
    Control control = Control.getNoFallbackControl(Control.FORMAT_PROPERTIES);
    return new Words(
        ResourceBundle.getBundle("chinelog.book.words", locale, control), Wording.of(locale));
  }

  /**
   * Such as {@code say("plate", 7)} for "Plate 7".
   *
   * @throws MissingResourceException if there is no such key
   */
  public String say(String key, Object... arguments) {
    String words = own.getString(key);
    for (int i = 0; i < arguments.length; i++) {
      words = words.replace("{" + i + "}", String.valueOf(arguments[i]));
    }
    return words;
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

  Wording shared() {
    return shared;
  }
}
