package chinelog.markup;

import chinelog.edition.Figure;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Figures that say the same of many parts, such as the masses of the bare shell and the wheelhouse.
 * Where others say something else of other parts, they are among {@code others}, which may be asked
 * again.
 *
 * @param aspects what is said, in the order of the figures
 * @param byPart figures by part, then by aspect, in the order of the figures
 * @param others the figures that are not so
 */
public record Parts(
    List<String> aspects, Map<String, Map<String, Figure>> byPart, List<Figure> others) {

  private static final int LEAST_PARTS = 3;
  private static final int LEAST_ASPECTS = 2;

  /** Figures by their groups, in the order of the figures. */
  public static Map<String, List<Figure>> byGroup(List<Figure> figures) {
    return figures.stream()
        .collect(Collectors.groupingBy(Figure::group, LinkedHashMap::new, Collectors.toList()));
  }

  public static Parts of(List<Figure> figures) {
    Map<String, Set<String>> parts = new LinkedHashMap<>();
    cells(figures)
        .forEach(c -> parts.computeIfAbsent(c.aspect(), a -> new HashSet<>()).add(c.part()));
    parts.values().removeIf(p -> p.size() < LEAST_PARTS);
    if (parts.size() < LEAST_ASPECTS) {
      return new Parts(List.of(), Map.of(), figures);
    }
    parts.keySet().retainAll(together(parts));
    if (parts.size() < LEAST_ASPECTS) {
      return new Parts(List.of(), Map.of(), figures);
    }
    Map<String, Map<String, Figure>> byPart = new LinkedHashMap<>();
    List<Figure> others = new ArrayList<>();
    for (Figure figure : figures) {
      Figure.Cell cell = figure.cell();
      if (cell != null && parts.containsKey(cell.aspect())) {
        byPart
            .computeIfAbsent(cell.part(), p -> new LinkedHashMap<>())
            .putIfAbsent(cell.aspect(), figure);
      } else {
        others.add(figure);
      }
    }
    return new Parts(List.copyOf(parts.keySet()), byPart, others);
  }

  /** The first aspect with all that share parts with it, directly or by another. */
  private static Set<String> together(Map<String, Set<String>> parts) {
    Set<String> aspects = new HashSet<>();
    Set<String> reached = new HashSet<>(parts.values().iterator().next());
    int before;
    do {
      before = aspects.size();
      parts.forEach(
          (aspect, of) -> {
            if (of.stream().anyMatch(reached::contains)) {
              aspects.add(aspect);
              reached.addAll(of);
            }
          });
    } while (aspects.size() > before);
    return aspects;
  }

  private static Stream<Figure.Cell> cells(List<Figure> figures) {
    return figures.stream().map(Figure::cell).filter(Objects::nonNull);
  }
}
