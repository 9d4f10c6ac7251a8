package chinelog.reckon.trade;

import chinelog.problem.Place;
import org.jspecify.annotations.Nullable;

/** Inputs that a reckoning cannot be done with, such as a table of offsets that is not sorted. */
public final class TradeException extends Exception {

  private final String input;
  private final String remedy;
  private final transient @Nullable Place place;

  TradeException(String input, String what, String remedy) {
    this(input, what, remedy, null);
  }

  TradeException(String input, String what, String remedy, @Nullable Place place) {
    super(what);
    this.input = input;
    this.remedy = remedy;
    this.place = place;
  }

  /** What is wrong, a sentence with its stop. */
  public String what() {
    return String.valueOf(getMessage());
  }

  /** What would put it right, a sentence with its stop. */
  public String remedy() {
    return remedy;
  }

  /** Name of the input at fault; empty if none is more at fault than the others. */
  public String input() {
    return input;
  }

  /** The cell or row of a table at fault; null where the input as a whole is. */
  public @Nullable Place place() {
    return place;
  }
}
