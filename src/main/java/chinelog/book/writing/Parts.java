package chinelog.book.writing;

import chinelog.edition.Figure;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Figures that say the same of many parts, such as "Bare shell, mass" and "Wheelhouse, mass": the
 * title's end after its last comma names what is said, and what stands before it the part.
 *
 * @param aspects what is said, in the order of the figures
 * @param byPart figures by part, then by aspect; parts in order, numbers in them as numbers
 * @param others the figures that are not so
 */
record Parts(List<String> aspects, Map<String, Map<String, Figure>> byPart, List<Figure> others) {

  private static final int LEAST_PARTS = 3;
  private static final int LEAST_ASPECTS = 2;
  private static final String COMMA = ", ";
  private static final Pattern NUMBER = Pattern.compile("[0-9]+");

  private static final Comparator<String> AS_READ =
      Comparator.comparing(Parts::sortKey).thenComparing(Comparator.naturalOrder());

  static Parts of(List<Figure> figures) {
    Map<String, TreeSet<String>> parts = new LinkedHashMap<>();
    for (Figure figure : figures) {
      String aspect = aspect(figure.title());
      if (aspect != null) {
        parts.computeIfAbsent(aspect, a -> new TreeSet<>()).add(part(figure.title()));
      }
    }
    parts.values().removeIf(p -> p.size() < LEAST_PARTS);
    Map<String, Map<String, Figure>> byPart = new TreeMap<>(AS_READ);
    List<Figure> others = new ArrayList<>();
    for (Figure figure : figures) {
      String aspect = aspect(figure.title());
      boolean isOne = parts.size() >= LEAST_ASPECTS && parts.containsKey(aspect);
      if (isOne && aspect != null) {
        byPart
            .computeIfAbsent(part(figure.title()), p -> new TreeMap<>())
            .putIfAbsent(aspect, figure);
      }
      if (!isOne) {
        others.add(figure);
      }
    }
    return new Parts(byPart.isEmpty() ? List.of() : List.copyOf(parts.keySet()), byPart, others);
  }

  /** What stands before the last comma of a title; all of it if there is none. */
  static String part(String title) {
    int comma = title.lastIndexOf(COMMA);
    return comma < 0 ? title : title.substring(0, comma);
  }

  /** What stands after the last comma of a title; null if there is none. */
  static @Nullable String aspect(String title) {
    int comma = title.lastIndexOf(COMMA);
    return comma < 0 ? null : title.substring(comma + COMMA.length());
  }

  /** With numbers of one width, so that station 2 comes before station 10. */
  private static String sortKey(String part) {
    return NUMBER.matcher(part).replaceAll(Parts::padded);
  }

  private static String padded(MatchResult number) {
    return "0".repeat(Math.max(0, 9 - number.group().length())) + number.group();
  }
}
