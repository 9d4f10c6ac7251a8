package chinelog.withhold;

import chinelog.label.Label;
import chinelog.label.Presence;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.reckon.Fact;
import chinelog.reckon.Facts;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Finds sums over the entries that are missing only because something is counted in of which
 * nothing at all may show: without it they would stand there, so that the gap tells of it.
 */
final class TellingGaps {

  private static final List<String> SUMS =
      List.of("hours.", "cost.", "stock.", "mass.", "growth.", "plan.");

  private static final int MOST_NAMED = 3;

  private final Facts facts;
  private final Sight sight;
  private final FigureMaker figures;

  TellingGaps(Facts facts, Sight sight, FigureMaker figures) {
    this.facts = facts;
    this.sight = sight;
    this.figures = figures;
  }

  /** One error for each label whose things leave such gaps among the figures asked for. */
  List<Problem> problems() {
    SortedMap<String, List<String>> gaps = new TreeMap<>();
    for (String name : figures.refused()) {
      facts
          .find(name)
          .filter(this::tells)
          .ifPresent(
              f ->
                  gaps.computeIfAbsent(figures.labelOf(f).toString(), l -> new ArrayList<>())
                      .add(name));
    }
    List<Problem> problems = new ArrayList<>();
    gaps.forEach((label, names) -> problems.add(problem(label, names)));
    return problems;
  }

  private static Problem problem(String label, List<String> names) {
    String some = String.join(", ", names.subList(0, Math.min(MOST_NAMED, names.size())));
    return Problem.error(
        Place.of("log.yaml"),
        "Nothing may show of what is under "
            + label
            + ", but figures that count it in would be missing ("
            + some
            + (names.size() > MOST_NAMED ? " and others" : "")
            + "), and that tells of it.",
        "Write \u201cpresence: note\u201d for the agreement, or record a release of each figure.");
  }

  private boolean tells(Fact fact) {
    Label label = figures.labelOf(fact);
    if (fact.inputs().isEmpty()
        || SUMS.stream().noneMatch(fact.name()::startsWith)
        || sight.presence(label) != Presence.NOTHING) {
      return false;
    }
    Set<Fact> leaves = new HashSet<>();
    collect(fact, leaves, new HashSet<>());
    // What the figure cannot do without; the rest is counted in only where it is there.
    return leaves.stream()
            .filter(f -> f.entry() == null || f.entry().equals(fact.entry()))
            .allMatch(f -> sight.allows(f.label()))
        && (fact.name().startsWith("stock.")
            || leaves.stream().anyMatch(f -> f.entry() != null && sight.allows(f.label())));
  }

  private void collect(Fact fact, Set<Fact> leaves, Set<String> seen) {
    if (!seen.add(fact.name())) {
      return;
    }
    if (fact.inputs().isEmpty()) {
      leaves.add(fact);
    }
    fact.inputs().forEach(name -> facts.find(name).ifPresent(f -> collect(f, leaves, seen)));
  }
}
