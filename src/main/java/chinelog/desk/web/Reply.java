package chinelog.desk.web;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;

/**
 * What a browser gets.
 *
 * @param status of HTTP, such as 200
 * @param type of the body, such as {@code text/html; charset=utf-8}
 * @param headers besides those that every reply has
 */
public record Reply(int status, String type, Map<String, String> headers, Body body) {

  static final String HTML = "text/html; charset=utf-8";

  static final int NOT_FOUND = 404;

  private static final String POLICY = "Content-Security-Policy";

  public Reply {
    headers = Map.copyOf(headers);
  }

  /** Writes what is sent after the headers. */
  @FunctionalInterface
  public interface Body {
    void writeTo(OutputStream out) throws IOException;
  }

  private static Reply of(int status, String type, byte[] bytes) {
    return new Reply(
        status,
        type,
        Map.of("Content-Length", String.valueOf(bytes.length)),
        out -> out.write(bytes));
  }

  private static Reply of(int status, String type, String text) {
    return of(status, type, text.getBytes(StandardCharsets.UTF_8));
  }

  /** A whole page, or a part that a script puts in its place. */
  public static Reply html(String html) {
    return of(200, HTML, html);
  }

  public static Reply json(String json) {
    return of(200, "application/json", json);
  }

  public static Reply bytes(String type, byte[] bytes) {
    return of(200, type, bytes);
  }

  /** A file, as it is when it is sent. */
  public static Reply file(String type, Path file) throws IOException {
    return new Reply(
        200,
        type,
        Map.of("Content-Length", String.valueOf(Files.size(file))),
        out -> Files.copy(file, out));
  }

  /** Tells the browser to go on to another page of the desk. */
  public static Reply seeOther(String path) {
    return of(303, HTML, "").with("Location", path);
  }

  /** Something is wrong with what was asked; said in words that tell nothing of the log. */
  public static Reply refused(int status, String words) {
    return of(status, "text/plain; charset=utf-8", words + "\n");
  }

  /** Nothing is at this address; the server says so in the browser's language. */
  public static Reply notFound() {
    return refused(NOT_FOUND, "");
  }

  /** The same with another header, or another value of one. */
  public Reply with(String name, String value) {
    Map<String, String> more = new TreeMap<>(headers);
    more.put(name, value);
    return new Reply(status, type, more, body);
  }

  /** The same under another policy of what its page may load (Content Security Policy Level 3). */
  public Reply under(String policy) {
    return with(POLICY, policy);
  }

  String policy() {
    return headers.getOrDefault(POLICY, "default-src 'none'; frame-ancestors 'none'");
  }
}
