package chinelog.reckon.formula;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import java.util.List;

/**
 * A function of formulas, such as {@code max(a, b)}.
 *
 * @param name as written before the bracket
 * @param takes what stands between its brackets, in words
 * @param least how many arguments it takes at least, {@code most} at most
 * @param yields what it makes of them, in words
 * @param example a formula that uses it
 */
public record Function(
    String name, String takes, int least, int most, String yields, String example, Rule rule) {

  static final int ANY = Integer.MAX_VALUE;

  /** Makes one quantity of some. */
  interface Rule {
    Quantity apply(List<Quantity> arguments) throws QuantityException;
  }

  public void checkCount(int count, int index) throws QuantityException {
    if (count < least || count > most) {
      throw new QuantityException(
          Sentence.of("{0}(…) takes {1}, not {2}.", name, Sentence.of(takes), count),
          Sentence.of("Write {0} between its brackets, such as {1}.", Sentence.of(takes), example),
          index);
    }
  }
}
