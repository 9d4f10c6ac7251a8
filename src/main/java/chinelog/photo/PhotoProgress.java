package chinelog.photo;

/** Is told how far a long piece of work has come, such as 12 of 40. */
@FunctionalInterface
public interface PhotoProgress {

  /** For those who do not care to hear. */
  PhotoProgress SILENT = (done, of) -> {};

  /**
   * Called in order, never from two threads at once.
   *
   * @param done from 1
   * @param of the whole
   */
  void done(int done, int of);
}
