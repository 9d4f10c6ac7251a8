package chinelog.log.reading;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;

/** Numbers out of quantities whose kind is already checked. */
public final class Amounts {

  private Amounts() {}

  /** The number that a quantity without dimension is, such as 0.05 for 5 %. */
  public static BigDecimal plainNumber(Quantity quantity) {
    try {
      return quantity.valueIn(Unit.ONE);
    } catch (QuantityException e) {
      throw new IllegalArgumentException(quantity + " is no plain number", e);
    }
  }
}
