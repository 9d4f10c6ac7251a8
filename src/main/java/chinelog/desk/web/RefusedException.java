package chinelog.desk.web;

import chinelog.problem.Sentence;

/** A request that is not answered, with what to say of it, which tells nothing of the log. */
final class RefusedException extends Exception {

  private final int status;
  private final transient Sentence words;

  RefusedException(int status, String words) {
    super(words, null, false, false);
    this.status = status;
    this.words = Sentence.of(words);
  }

  int status() {
    return status;
  }

  Sentence words() {
    return words;
  }
}
