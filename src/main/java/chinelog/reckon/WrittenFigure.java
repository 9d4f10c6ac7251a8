package chinelog.reckon;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.text.DecimalFormatSymbols;
import java.util.Currency;
import java.util.Locale;

/**
 * A figure as it stands in a text, such as {@code 1.19 m}, held against a fact.
 *
 * <p>Numbers may be written with a decimal point or in the manner of the log's language, money with
 * its sign or code.
 */
record WrittenFigure(Quantity value, Quantity lastDigit) {

  /**
   * The figure written {@code text} in a log of that language and money.
   *
   * @throws QuantityException if it is none
   */
  static WrittenFigure parse(String text, Locale locale, String currency) throws QuantityException {
    String plain = plain(text, locale, currency);
    return new WrittenFigure(Quantity.parse(plain), Quantity.lastDigit(plain));
  }

  /** Whether words hold a figure at all; words without one are not checked. */
  static boolean isFigure(String text) {
    return text.codePoints().anyMatch(c -> Character.isDigit(c) || "½⅓⅔¼¾⅛⅜⅝⅞".indexOf(c) >= 0);
  }

  private static String plain(String text, Locale locale, String currency) {
    String plain = text.strip().replaceFirst("^(?:≈|about|c\\.)\\s*", "");
    String sign = Currency.getInstance(currency).getSymbol(locale);
    if (plain.startsWith(sign)) {
      plain = plain.substring(sign.length()).strip() + " " + currency;
    } else if (plain.endsWith(sign)) {
      plain = plain.substring(0, plain.length() - sign.length()).strip() + " " + currency;
    } else if (plain.startsWith(currency)) {
      plain = plain.substring(currency.length()).strip() + " " + currency;
    }
    DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(locale);
    String group = java.util.regex.Pattern.quote(String.valueOf(symbols.getGroupingSeparator()));
    plain = plain.replaceAll("(?<=[0-9])" + group + "(?=[0-9]{3}(?![0-9]))", "");
    return symbols.getDecimalSeparator() == ','
        ? plain.replaceAll("(?<=[0-9]),(?=[0-9])", ".")
        : plain;
  }

  /**
   * Whether this says the same as a fact: it differs by no more than half of its last digit, or
   * than the tolerance of the fact.
   */
  boolean agrees(Fact fact) {
    return agrees(fact.value());
  }

  boolean agrees(Quantity actual) {
    try {
      Unit unit = value.unit();
      BigDecimal apart = actual.valueIn(unit).subtract(value.value()).abs();
      BigDecimal half = lastDigit.valueIn(unit).divide(BigDecimal.valueOf(2));
      BigDecimal spread = actual.in(unit).tolerance();
      BigDecimal allowed = spread == null ? half : half.max(spread);
      // 25 digits are enough: a third of something never ends.
      return apart.subtract(allowed).compareTo(value.value().abs().movePointLeft(25)) <= 0;
    } catch (QuantityException e) {
      return false;
    }
  }
}
