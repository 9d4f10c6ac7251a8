package chinelog.markup;

import chinelog.edition.Figure;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The chief figures of a model: its size as built, else as drawn, its mass, and how it goes. What
 * went into it, and what was counted or timed on the way, are not among them.
 */
public final class Particulars {

  private static final int MOST = 10;

  private Particulars() {}

  public static List<Figure> of(List<Figure> figures) {
    List<Figure> whole = ofTheWhole(figures);
    Map<String, Figure> chief = new LinkedHashMap<>();
    whole.stream()
        .filter(f -> !f.model().isEmpty())
        .flatMap(f -> Stream.ofNullable(f.chief()).map(c -> Map.entry(c, f)))
        .sorted(Comparator.comparing(c -> c.getKey().rank()))
        // What was measured on the model stands for what it was to be.
        .forEach(c -> chief.putIfAbsent(c.getKey().what(), c.getValue()));
    List<Figure> chosen = chief.isEmpty() ? inBothSizes(whole) : List.copyOf(chief.values());
    return chosen.subList(0, Math.min(MOST, chosen.size()));
  }

  /** Without what is said of many parts. */
  private static List<Figure> ofTheWhole(List<Figure> figures) {
    Parts parts = Parts.of(figures);
    return parts.byPart().isEmpty() ? figures : ofTheWhole(parts.others());
  }

  private static List<Figure> inBothSizes(List<Figure> figures) {
    return figures.stream().filter(f -> !f.model().isEmpty() && !f.fullSize().isEmpty()).toList();
  }
}
