package chinelog.quantity;

import chinelog.problem.Sentence;

/**
 * Text that is no quantity, or a computation that has no meaning, such as adding metres to grams.
 *
 * <p>Carries no place: whoever read the text knows where it stood.
 */
public final class QuantityException extends Exception {

  private final int index;
  private final transient Sentence what;
  private final transient Sentence remedy;
  private final boolean general;

  /**
   * @param what what is wrong, a sentence with its stop
   * @param remedy what to write instead, a sentence with its stop
   * @param index offset into the text in UTF-16 code units, from 0; 0 where there is no text
   */
  public QuantityException(CharSequence what, CharSequence remedy, int index) {
    this(what, remedy, index, false);
  }

  private QuantityException(CharSequence what, CharSequence remedy, int index, boolean general) {
    super(what.toString());
    this.what = Sentence.of(what);
    this.remedy = Sentence.of(remedy);
    this.index = index;
    this.general = general;
  }

  /** One whose remedy says how any quantity is written, for want of a better guess. */
  static QuantityException general(CharSequence what, CharSequence remedy, int index) {
    return new QuantityException(what, remedy, index, true);
  }

  /** The same where the text stands so many code units further on. */
  QuantityException movedBy(int offset) {
    return new QuantityException(what(), remedy, index + offset, general);
  }

  public Sentence what() {
    return what;
  }

  public Sentence remedy() {
    return remedy;
  }

  /** Whether who knows what is wanted here can give a better remedy. */
  public boolean isGeneral() {
    return general;
  }

  public int index() {
    return index;
  }
}
