package chinelog.markup;

import chinelog.edition.Figure;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * How figures were worked out, told once for those that were worked out alike: they differ in
 * nothing but the numbers put in.
 */
public final class Ways {

  /** A number, with a fraction or an exponent, its unit and what follows it in a row of numbers. */
  private static final Pattern NUMBERS =
      Pattern.compile(
          "[\u2212-]?[0-9\u00bc-\u00be\u2150-\u215f][0-9.,\u2044\u00a0\u202f]*"
              + "(?:[ \u00a0\u202f]?(?:[\u00b0%]|[\\p{L}·/²³⁴]{1,5}(?=[ ,;:.)]|$)))?"
              + "[ \u00a0]?[;,:+×÷=()⌈⌉\u2212]*[ \u00a0]?");

  private static final Pattern ROW = Pattern.compile("(?:# ?[+×÷=()⌈⌉\u2212½⅔]* ?)+");

  private Ways() {}

  /**
   * A way with the figures that came by it.
   *
   * @param example the first of them, whose steps are told
   * @param alike the others
   */
  public record Way(Figure example, List<Figure> alike) {}

  /** The ways of figures, in their order; what was not worked out has none. */
  public static List<Way> of(List<Figure> figures, Sources sources) {
    Map<String, List<Figure>> byShape = new LinkedHashMap<>();
    for (Figure figure : figures) {
      if (!figure.working().isEmpty()) {
        byShape.computeIfAbsent(shape(figure, sources), s -> new ArrayList<>()).add(figure);
      }
    }
    return byShape.values().stream()
        .map(all -> new Way(all.get(0), List.copyOf(all.subList(1, all.size()))))
        .toList();
  }

  /**
   * What came of the steps of a figure, and those of them that an example that was worked out alike
   * does not have.
   */
  public static String own(Figure figure, Figure example, Sources sources) {
    List<String> told = sources.steps(example);
    List<String> steps = sources.steps(figure);
    String last = steps.get(steps.size() - 1);
    return steps.stream()
        .filter(step -> !told.contains(step) || step.equals(last))
        .collect(Collectors.joining("; "));
  }

  /** Whether two figures were worked out alike. */
  public static boolean areAlike(Figure one, Figure other, Sources sources) {
    return !one.working().isEmpty()
        && !other.working().isEmpty()
        && shape(one, sources).equals(shape(other, sources));
  }

  private static String shape(Figure figure, Sources sources) {
    String steps = String.join("\n", sources.steps(figure));
    return ROW.matcher(NUMBERS.matcher(steps).replaceAll("#")).replaceAll("#");
  }
}
