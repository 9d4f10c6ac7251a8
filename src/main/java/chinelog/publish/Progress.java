package chinelog.publish;

/** Told of what is being done, for those who wait. */
@FunctionalInterface
public interface Progress {

  /** Tells nobody. */
  Progress SILENT = step -> {};

  /**
   * A new step has begun.
   *
   * @param step in words, such as "printing the build book for public"
   */
  void begin(String step);
}
