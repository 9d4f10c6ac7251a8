package chinelog.withhold;

import chinelog.log.records.FigureGroup;
import chinelog.log.records.Log;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import chinelog.reckon.Facts;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Finds names below the headings of figures that no figure begins with. */
public final class IdleGroups {

  private IdleGroups() {}

  /** A reminder of each. */
  public static List<Problem> find(Log log, Facts facts) {
    Set<String> known =
        facts.byName().values().stream().map(f -> f.id().group()).collect(Collectors.toSet());
    return log.head().figureGroups().stream()
        .flatMap(g -> g.names().stream())
        .filter(name -> !known.contains(name.name()))
        .map(IdleGroups::reminder)
        .toList();
  }

  private static Problem reminder(FigureGroup.Name name) {
    return Problem.reminder(
        name.place(),
        Sentence.of("The name of no figure begins with \"{0}\".", name.name()),
        "Write what stands before the first point of figures' names, such as hull for hull.loa.");
  }
}
