package chinelog.reckon.trade;

import chinelog.problem.Place;
import chinelog.problem.Sentence;
import org.jspecify.annotations.Nullable;

/** Inputs that a reckoning cannot be done with, such as a table of offsets that is not sorted. */
public final class TradeException extends Exception {

  private final String input;
  private final transient Sentence what;
  private final transient Sentence remedy;
  private final transient @Nullable Place place;

  TradeException(String input, CharSequence what, CharSequence remedy) {
    this(input, what, remedy, null);
  }

  TradeException(String input, CharSequence what, CharSequence remedy, @Nullable Place place) {
    super(what.toString());
    this.what = Sentence.of(what);
    this.input = input;
    this.remedy = Sentence.of(remedy);
    this.place = place;
  }

  /** What is wrong, a sentence with its stop. */
  public Sentence what() {
    return what;
  }

  /** What would put it right, a sentence with its stop. */
  public Sentence remedy() {
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
