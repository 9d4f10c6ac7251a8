package chinelog.withhold;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.reckon.Fact;
import java.util.List;

/** Sums of facts of one kind. */
final class Quantities {

  private Quantities() {}

  /** The sum of at least one fact, in the unit of the first. */
  static Quantity sum(List<Fact> parts) {
    return parts.stream().map(Fact::value).reduce(Quantities::plus).orElseThrow();
  }

  /** The sum of two quantities known to be of one kind. */
  static Quantity plus(Quantity a, Quantity b) {
    try {
      return a.plus(b);
    } catch (QuantityException e) {
      throw new IllegalArgumentException(e.getMessage(), e);
    }
  }
}
