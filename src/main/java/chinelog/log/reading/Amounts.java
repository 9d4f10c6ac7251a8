package chinelog.log.reading;

import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.util.regex.Pattern;

/** Numbers out of quantities whose kind is already checked. */
public final class Amounts {

  private static final Pattern CODE = Pattern.compile("\\b[A-Z]{3}\\b");

  private Amounts() {}

  /**
   * What a rule or formula is under that is marked with {@code label}: of money that stands in it,
   * and of which nothing else is said, the workshop alone knows.
   */
  public static Label own(String expression, Label label) {
    return label.isNone() && CODE.matcher(expression).results().anyMatch(m -> isMoney(m.group()))
        ? Label.of(Agreement.OWN_MONEY)
        : label;
  }

  private static boolean isMoney(String symbol) {
    try {
      return Unit.parse(symbol).isMoney();
    } catch (QuantityException e) {
      return false;
    }
  }

  /** The number that a quantity without dimension is, such as 0.05 for 5 %. */
  public static BigDecimal plainNumber(Quantity quantity) {
    try {
      return quantity.valueIn(Unit.ONE);
    } catch (QuantityException e) {
      throw new IllegalArgumentException(quantity + " is no plain number", e);
    }
  }
}
