package chinelog.desk.web;

/** A request that is not answered, with what to say of it, which tells nothing of the log. */
final class RefusedException extends Exception {

  private final int status;

  RefusedException(int status, String words) {
    super(words, null, false, false);
    this.status = status;
  }

  int status() {
    return status;
  }

  String words() {
    return String.valueOf(getMessage());
  }
}
