package chinelog.markup;

import chinelog.edition.Figure;
import chinelog.wording.Fragment;
import chinelog.wording.WorkedLine;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * How figures were worked out, told once for those that were worked out alike: they differ in
 * nothing but the numbers put in.
 */
public final class Ways {

  private static final Fragment ANY = Fragment.figures("#");

  private Ways() {}

  /**
   * A way with the figures that came by it.
   *
   * @param example the first of them, whose steps are told
   * @param alike the others
   */
  public record Way(Figure example, List<Alike> alike) {}

  /**
   * A figure that was worked out as an example was.
   *
   * @param own what came of its steps, and the figures of those that the example does not have
   */
  public record Alike(Figure figure, String own) {}

  /** The ways of figures, in their order; what was not worked out has none. */
  public static List<Way> of(List<Figure> figures, Sources sources) {
    Map<List<WorkedLine>, List<Figure>> byShape = new LinkedHashMap<>();
    for (Figure figure : figures) {
      if (!figure.working().isEmpty()) {
        byShape.computeIfAbsent(shape(figure, sources), s -> new ArrayList<>()).add(figure);
      }
    }
    return byShape.values().stream().map(all -> way(all, sources)).toList();
  }

  private static Way way(List<Figure> all, Sources sources) {
    Figure example = all.get(0);
    List<WorkedLine> told = sources.steps(example);
    return new Way(
        example,
        all.stream()
            .skip(1)
            .map(figure -> new Alike(figure, own(sources.steps(figure), told)))
            .toList());
  }

  private static String own(List<WorkedLine> steps, List<WorkedLine> told) {
    return steps.stream()
        .filter(step -> step.kind() == WorkedLine.Kind.RESULT || !told.contains(step))
        .map(step -> step.kind() == WorkedLine.Kind.HOW ? figures(step) : step.text())
        .collect(Collectors.joining("; "));
  }

  /** The figures of a line whose words are those of the example. */
  private static String figures(WorkedLine step) {
    return step.fragments().stream()
        .filter(fragment -> fragment.kind() == Fragment.Kind.FIGURES)
        .map(Fragment::text)
        .collect(Collectors.joining(", "));
  }

  /** Whether two figures were worked out alike. */
  public static boolean areAlike(Figure one, Figure other, Sources sources) {
    return !one.working().isEmpty()
        && !other.working().isEmpty()
        && shape(one, sources).equals(shape(other, sources));
  }

  /** The steps with any figures for those that stand in them. */
  private static List<WorkedLine> shape(Figure figure, Sources sources) {
    return sources.steps(figure).stream()
        .map(
            step ->
                new WorkedLine(
                    step.kind(),
                    step.fragments().stream()
                        .map(fragment -> fragment.kind() == Fragment.Kind.FIGURES ? ANY : fragment)
                        .toList()))
        .toList();
  }
}
