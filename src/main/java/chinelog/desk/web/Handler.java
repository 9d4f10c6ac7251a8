package chinelog.desk.web;

import java.io.IOException;

/** Answers requests. */
@FunctionalInterface
public interface Handler {

  /**
   * @throws IOException if a file of the log cannot be read or written
   */
  Reply answer(WebRequest request) throws IOException;
}
