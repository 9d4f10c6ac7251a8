package chinelog.log.reading;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import org.jspecify.annotations.Nullable;

/**
 * What sort of quantity belongs somewhere.
 *
 * @param words such as "a mass"
 * @param unit one of its units; null where any will do
 * @param example such as {@code 412 g}
 */
public record Kind(String words, @Nullable Unit unit, String example) {

  public static final Kind ANY = new Kind("a quantity", null, "700 mm");
  public static final Kind MASS = new Kind("a mass", Unit.GRAM, "412 g");
  public static final Kind LENGTH = new Kind("a length", Unit.MILLIMETRE, "45 mm");
  public static final Kind HOURS = new Kind("a time", Unit.HOUR, "2.5 h");
  public static final Kind SHARE = new Kind("a share", Unit.ONE, "5 %");

  static Kind money(String currency) {
    return new Kind("an amount of money", unit(currency), "21.60 " + currency);
  }

  static Kind moneyPerHour(String currency) {
    return new Kind("money per hour", unit(currency + "/h"), "34 " + currency + "/h");
  }

  /** What is wrong with a quantity here, or null. */
  @Nullable CharSequence complaint(Quantity quantity) {
    Unit wanted = unit;
    if (wanted == null || wanted.isCompatible(quantity.unit())) {
      return null;
    }
    String money = wanted.currency();
    String other = quantity.unit().currency();
    if (money != null && other != null && !money.equals(other)) {
      return Sentence.of("This is in {0}, but the log's money is {1}.", other, money);
    }
    return quantity.unit().equals(Unit.ONE)
        ? Sentence.of("This number has no unit, but {0} belongs here.", Sentence.of(words))
        : Sentence.of(
            "\"{0}\" is not the unit of {1}.", quantity.unit().symbol(), Sentence.of(words));
  }

  /** What to write, a full sentence. */
  Sentence remedy() {
    return Sentence.of("Write {0}, such as {1}.", Sentence.of(words), example);
  }

  private static @Nullable Unit unit(String text) {
    try {
      return Unit.parse(text);
    } catch (QuantityException e) {
      return null;
    }
  }
}
