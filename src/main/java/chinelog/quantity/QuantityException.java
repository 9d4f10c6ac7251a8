package chinelog.quantity;

/**
 * Text that is no quantity, or a computation that has no meaning, such as adding metres to grams.
 *
 * <p>Carries no place: whoever read the text knows where it stood.
 */
public final class QuantityException extends Exception {

  private final int index;
  private final String remedy;

  /**
   * @param what what is wrong, a sentence with its stop
   * @param remedy what to write instead, a sentence with its stop
   * @param index offset into the text in UTF-16 code units, from 0; 0 where there is no text
   */
  public QuantityException(String what, String remedy, int index) {
    super(what);
    this.remedy = remedy;
    this.index = index;
  }

  public String what() {
    return String.valueOf(getMessage());
  }

  public String remedy() {
    return remedy;
  }

  public int index() {
    return index;
  }
}
