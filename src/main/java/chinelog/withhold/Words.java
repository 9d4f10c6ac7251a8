package chinelog.withhold;

import java.text.MessageFormat;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.Optional;
import java.util.ResourceBundle;

/**
 * The words that an edition adds of itself, in the log's language where there are such, else
 * English.
 */
final class Words {

  private final Locale locale;
  private final ResourceBundle bundle;

  Words(Locale locale) {
    this.locale = locale;
    this.bundle =
        ResourceBundle.getBundle(
            "chinelog.withhold.words",
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  String say(String key, Object... parts) {
    String pattern = bundle.getString(key);
    return parts.length == 0 ? pattern : new MessageFormat(pattern, locale).format(parts);
  }

  Optional<String> find(String key) {
    try {
      return Optional.of(bundle.getString(key));
    } catch (MissingResourceException e) {
      return Optional.empty();
    }
  }

  /** A date in words, such as "4 April 2026". */
  String date(LocalDate date) {
    return DateTimeFormatter.ofLocalizedDate(FormatStyle.LONG).withLocale(locale).format(date);
  }
}
