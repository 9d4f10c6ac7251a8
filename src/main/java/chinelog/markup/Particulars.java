package chinelog.markup;

import chinelog.edition.Figure;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The chief figures of a model: its size as built, else as drawn, its mass, and how it goes. What
 * went into it, and what was counted or timed on the way, are not among them.
 */
public final class Particulars {

  private static final int MOST = 10;

  /** Beginnings of names, in the order in which their figures are listed. */
  private static final List<String> CHIEF =
      List.of(
          "built.", "hull.", "rig.", "sail.", "mass.", "power.", "trial.", "model.", "balance.");

  private Particulars() {}

  public static List<Figure> of(List<Figure> figures) {
    List<Figure> whole = Parts.of(figures).others();
    List<Figure> chief = new ArrayList<>();
    Set<String> told = new HashSet<>();
    for (String beginning : CHIEF) {
      whole.stream()
          .filter(f -> f.name().startsWith(beginning))
          .filter(f -> !f.model().isEmpty() && !f.name().contains("full"))
          .filter(Particulars::isResult)
          // What was measured on the model stands for what it was to be.
          .filter(f -> told.add(f.name().substring(beginning.length())))
          .forEach(chief::add);
    }
    List<Figure> chosen = chief.isEmpty() ? inBothSizes(whole) : chief;
    return chosen.subList(0, Math.min(MOST, chosen.size()));
  }

  /** Of a trial, its results: the course and the times are how they were come by. */
  private static boolean isResult(Figure figure) {
    return !figure.name().startsWith("trial.")
        || figure.name().endsWith("speed")
        || !figure.working().isEmpty();
  }

  private static List<Figure> inBothSizes(List<Figure> figures) {
    return figures.stream().filter(f -> !f.model().isEmpty() && !f.fullSize().isEmpty()).toList();
  }
}
