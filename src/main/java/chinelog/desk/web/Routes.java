package chinelog.desk.web;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Who answers which address. One that ends in {@code /} stands for all below it, unless a longer
 * one does: {@code get("/as/", …)} answers {@code /as/public/index.html}, whose {@link
 * Request#rest()} is {@code public/index.html}.
 */
public final class Routes {

  private final Map<String, Handler> handlers = new HashMap<>();

  /** Answers what only asks. */
  public Routes get(String path, Handler handler) {
    return put("GET " + path, handler);
  }

  /** Answers what changes something. */
  public Routes post(String path, Handler handler) {
    return put("POST " + path, handler);
  }

  private Routes put(String key, Handler handler) {
    if (handlers.putIfAbsent(key, handler) != null) {
      throw new IllegalArgumentException("two answer " + key);
    }
    return this;
  }

  /**
   * A handler, and the part of a path that it stands for.
   *
   * @param path such as {@code /as/}
   */
  record Found(Handler handler, String path) {}

  Optional<Found> find(String method, String path) {
    Handler exact = handlers.get(method + " " + path);
    if (exact != null) {
      return Optional.of(new Found(exact, path));
    }
    for (int end = path.lastIndexOf('/'); end >= 0; end = path.lastIndexOf('/', end - 1)) {
      String above = path.substring(0, end + 1);
      Handler handler = above.equals("/") ? null : handlers.get(method + " " + above);
      if (handler != null) {
        return Optional.of(new Found(handler, above));
      }
    }
    return Optional.empty();
  }
}
