package chinelog.reckon.trade;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The latest few results of a function by what it was given, which decides them wholly. */
final class LatestResults<V> {

  /** The whole log, and what is left of it for several readers. */
  private static final int MOST = 6;

  private final Map<Object, V> results =
      new LinkedHashMap<>(MOST, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Object, V> eldest) {
          return size() > MOST;
        }
      };

  synchronized @Nullable V get(Object given) {
    return results.get(given);
  }

  synchronized V keep(Object given, V result) {
    results.put(given, result);
    return result;
  }
}
