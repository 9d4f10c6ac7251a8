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
 * @param aspects what is said, in the order that the parts have it
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
    return new Parts(inOrder(byPart), byPart, others);
  }

  /**
   * What is said, in an order that each part keeps to where it can: what a part has between two
   * that came before stands between them.
   */
  private static List<String> inOrder(Map<String, Map<String, Figure>> byPart) {
    List<String> order = new ArrayList<>();
    for (Map<String, Figure> figures : byPart.values()) {
      int at = 0;
      List<String> fresh = new ArrayList<>();
      for (String aspect : figures.keySet()) {
        int known = order.indexOf(aspect);
        if (known < 0) {
          fresh.add(aspect);
        } else {
          int before = Math.max(at, known);
          order.addAll(before, fresh);
          at = before + fresh.size() + 1;
          fresh.clear();
        }
      }
      order.addAll(Math.min(at, order.size()), fresh);
    }
    return List.copyOf(order);
  }

  /** What is said of each part under an aspect, one below the other. */
  public AlignedNumbers column(String aspect, Wording wording) {
    List<String> values = new ArrayList<>();
    List<String> tolerances = new ArrayList<>();
    for (Map<String, Figure> of : byPart.values()) {
      Figure figure = of.get(aspect);
      String shown = figure == null ? "" : figure.shown();
      values.add(shown);
      tolerances.add(figure == null || shown.contains("±") ? "" : figure.tolerance());
    }
    return AlignedNumbers.of(values, tolerances, wording.decimalSign());
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
