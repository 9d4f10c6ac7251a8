package chinelog.markup;

import chinelog.edition.Figure;
import chinelog.wording.Fragment;
import chinelog.wording.WorkedLine;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What many figures name as their source, said once as a numbered note: a book, such as "Derrett
 * and Barrass, Ship Stability", and what was put into a reckoning, such as a table.
 */
public final class Sources {

  /** A note is worth following only where it spares saying a thing again. */
  private static final int LEAST_TIMES = 3;

  private static final int LEAST_GIVEN = 2;

  private final Map<String, Integer> numbers = new LinkedHashMap<>();

  private Sources() {}

  /** The sources of figures, numbered from 1 as they come. */
  public static Sources of(List<Figure> figures) {
    Map<String, Integer> times = new LinkedHashMap<>();
    for (Figure figure : figures) {
      figure.working().stream()
          .flatMap(step -> step.fragments().stream())
          .filter(fragment -> fragment.kind() == Fragment.Kind.SOURCE)
          .forEach(source -> times.merge(source.text(), 1, Integer::sum));
      if (given(figure).size() >= LEAST_GIVEN) {
        times.merge(inOne(given(figure)), 1, Integer::sum);
      }
    }
    Sources sources = new Sources();
    times.forEach(
        (source, said) -> {
          if (said >= LEAST_TIMES) {
            sources.numbers.put(source, sources.numbers.size() + 1);
          }
        });
    return sources;
  }

  private static List<WorkedLine> given(Figure figure) {
    return figure.working().stream().filter(step -> step.kind() == WorkedLine.Kind.GIVEN).toList();
  }

  private static String inOne(List<WorkedLine> given) {
    return given.stream().map(WorkedLine::text).collect(Collectors.joining("; "));
  }

  /** The notes, in the order of their numbers. */
  public List<String> notes() {
    return List.copyOf(numbers.keySet());
  }

  /** How a figure was worked out, with notes as "[3]". */
  public List<WorkedLine> steps(Figure figure) {
    return shortened(figure).stream()
        .map(s -> new WorkedLine(s.kind(), s.fragments().stream().map(this::noted).toList()))
        .toList();
  }

  private Fragment noted(Fragment fragment) {
    Integer number = number(fragment);
    return number == null ? fragment : Fragment.words("[" + number + "]");
  }

  private @Nullable Integer number(Fragment fragment) {
    return fragment.kind() == Fragment.Kind.SOURCE ? numbers.get(fragment.text()) : null;
  }

  /** Writes the steps as a list, with links to the notes. */
  public void write(HtmlWriter html, Figure figure, IntFunction<String> label) {
    html.open("ol", "class", "working");
    for (WorkedLine step : shortened(figure)) {
      html.open("li");
      for (Fragment fragment : step.fragments()) {
        Integer number = number(fragment);
        if (number == null) {
          html.text(fragment.inLine());
        } else {
          html.element(
              "a",
              "[" + number + "]",
              "href",
              "#source-" + number,
              "aria-label",
              label.apply(number));
        }
      }
      html.close("li");
    }
    html.close("ol");
  }

  /** The steps; what was put in stands in the first of them as a source where a note tells it. */
  private List<WorkedLine> shortened(Figure figure) {
    List<WorkedLine> given = given(figure);
    String inOne = inOne(given);
    if (given.size() < LEAST_GIVEN || !numbers.containsKey(inOne)) {
      return figure.working();
    }
    List<WorkedLine> steps = new ArrayList<>(figure.working());
    steps.removeAll(given);
    List<Fragment> how = new ArrayList<>(steps.get(0).fragments());
    how.add(Fragment.words(" "));
    how.add(Fragment.source(inOne));
    steps.set(0, new WorkedLine(steps.get(0).kind(), how));
    return steps;
  }
}
