package chinelog.publish;

/** Shows on the terminal what is being done at the moment. */
@FunctionalInterface
public interface Progress {

  /** Shows nothing. */
  Progress SILENT = step -> {};

  /**
   * A new step has begun.
   *
   * @param step in words, such as "printing the build book for public"
   */
  void begin(String step);

  /**
   * A step that goes through many things has come to one of them.
   *
   * @param step in words, such as "photograph"
   * @param done from 1
   * @param of how many there are
   */
  default void count(String step, int done, int of) {
    begin(step + " " + done + " of " + of);
  }

  /** A step that may have been expected is not needed this time. */
  default void skip(String step) {}
}
