package chinelog.publish;

/** Shows what is being done at the moment. */
@FunctionalInterface
public interface Progress {

  /** Shows nothing. */
  Progress SILENT = step -> {};

  /** A new step has begun. */
  void begin(Step step);

  /**
   * A step that goes through many things has come to one of them.
   *
   * @param done from 1
   * @param of how many there are
   */
  default void count(Step step, int done, int of) {
    begin(step.at(done, of));
  }

  /** A step that may have been expected is not needed this time. */
  default void skip(Step step) {}
}
