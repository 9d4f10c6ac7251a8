package chinelog.markup;

import chinelog.edition.Figure;
import chinelog.wording.Fragment;
import chinelog.wording.WorkedLine;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * How figures were worked out, told once for those that were worked out alike: they differ in
 * nothing but the numbers put in.
 */
public final class Ways {

  /** So many numbers have a column each; more are told in a row. */
  private static final int MOST_COLUMNS = 6;

  /** Fewer figures are sooner read in a row each. */
  private static final int LEAST_ROWS = 3;

  private Ways() {}

  /**
   * A way with the figures that came by it.
   *
   * @param example the first of them, whose steps are told
   * @param alike the others
   * @param sheet their numbers in columns; without rows where each has a line of its own
   */
  public record Way(Figure example, List<Figure> alike, Sheet sheet) {

    /** Whether all say the same of their parts. */
    public boolean isOfOne() {
      return alike.stream().allMatch(other -> aspect(other).equals(aspect(example)));
    }

    /** One of them among the others: by its part, where all say the same. */
    public String named(Figure figure) {
      Figure.Cell cell = figure.cell();
      return cell == null || !isOfOne() ? figure.title() : cell.part();
    }

    private static String aspect(Figure figure) {
      return figure.cell() == null ? figure.title() : figure.cell().aspect();
    }
  }

  /**
   * What was put in for each figure, the example first.
   *
   * @param formula what was done with the columns, which are named by numbers in rings
   * @param heads of the columns, with the unit; the last is that of what came of it
   * @param rows numbers by figure, and what came of them
   */
  public record Sheet(String formula, List<String> heads, Map<Figure, List<String>> rows) {
    static final Sheet NONE = new Sheet("", List.of(), Map.of());

    /** The figures, the example first. */
    public List<Figure> figures() {
      return List.copyOf(rows.keySet());
    }

    /** What was put in for a figure, column by column, and what came of it. */
    public List<String> numbers(Figure figure) {
      return rows.getOrDefault(figure, List.of());
    }
  }

  /** The ways of figures, in their order; what was not worked out has none. */
  public static List<Way> of(List<Figure> figures, Sources sources, Wording wording) {
    Map<List<List<Clause.Token>>, List<Figure>> byShape = new LinkedHashMap<>();
    for (Figure figure : figures) {
      if (!figure.working().isEmpty()) {
        byShape.computeIfAbsent(shape(figure, sources), s -> new ArrayList<>()).add(figure);
      }
    }
    return byShape.values().stream()
        .map(all -> new Way(all.get(0), all.subList(1, all.size()), sheet(all, sources, wording)))
        .toList();
  }

  /**
   * What was put in for a figure and what came of it, where it is known how an example was worked
   * out alike: the sums alone, if there are any, or else all that the example does not say.
   */
  public static String own(Figure figure, Figure example, Sources sources) {
    List<Clause> told = clauses(example, sources);
    List<Clause> own =
        clauses(figure, sources).stream().filter(clause -> !told.contains(clause)).toList();
    String put = calculations(own).stream().map(Clause::text).collect(Collectors.joining(" "));
    return (ended(put) + " " + result(figure, sources)).strip();
  }

  /** The figures that were worked out like the example of a way, by what is to be said of them. */
  public static Map<String, List<Figure>> lines(Way way, Sources sources) {
    Map<String, List<Figure>> byOwn = new LinkedHashMap<>();
    for (Figure figure : way.alike()) {
      byOwn
          .computeIfAbsent(own(figure, way.example(), sources), o -> new ArrayList<>())
          .add(figure);
    }
    return byOwn;
  }

  private static String ended(String sentences) {
    return sentences.endsWith(".") ? sentences.substring(0, sentences.length() - 1) : sentences;
  }

  /** Whether two figures were worked out alike. */
  public static boolean areAlike(Figure one, Figure other, Sources sources) {
    return !one.working().isEmpty()
        && !other.working().isEmpty()
        && shape(one, sources).equals(shape(other, sources));
  }

  private static Sheet sheet(List<Figure> figures, Sources sources, Wording wording) {
    if (figures.size() < LEAST_ROWS) {
      return Sheet.NONE;
    }
    List<List<Clause>> all = figures.stream().map(figure -> clauses(figure, sources)).toList();
    List<Clause> first = all.get(0);
    if (all.stream().anyMatch(clauses -> clauses.size() != first.size())) {
      return Sheet.NONE;
    }
    List<Integer> differing =
        IntStream.range(0, first.size())
            .filter(i -> all.stream().anyMatch(clauses -> !clauses.get(i).equals(first.get(i))))
            .boxed()
            .toList();
    List<Clause> put = calculations(differing.stream().map(first::get).toList());
    List<Integer> told = differing.stream().filter(i -> put.contains(first.get(i))).toList();
    List<List<Fragment>> rows =
        all.stream()
            .map(clauses -> told.stream().map(clauses::get).flatMap(Clause::figures).toList())
            .toList();
    boolean isEven = rows.stream().map(List::size).distinct().count() == 1;
    return isEven
        ? sheet(figures, told.stream().map(first::get).toList(), rows, wording)
        : Sheet.NONE;
  }

  private static Sheet sheet(
      List<Figure> figures, List<Clause> put, List<List<Fragment>> rows, Wording wording) {
    Map<List<String>, String> signs = new LinkedHashMap<>();
    List<String> heads = new ArrayList<>();
    StringBuilder formula = new StringBuilder();
    int next = 0;
    for (Clause clause : put) {
      formula.append(formula.isEmpty() ? "" : " ");
      for (Fragment fragment : clause.fragments()) {
        if (fragment.kind() != Fragment.Kind.FIGURE) {
          formula.append(fragment.inLine());
          continue;
        }
        int at = next++;
        List<String> column = rows.stream().map(row -> row.get(at).number()).toList();
        if (column.stream().distinct().count() == 1) {
          formula.append(fragment.text());
          continue;
        }
        String sign = signs.computeIfAbsent(column, c -> ring(signs.size()));
        formula.append(sign);
        if (heads.size() < signs.size()) {
          heads.add(fragment.unit().isEmpty() ? sign : sign + " (" + fragment.unit() + ")");
        }
      }
    }
    if (signs.isEmpty() || signs.size() > MOST_COLUMNS) {
      return Sheet.NONE;
    }
    List<AlignedNumbers> columns = new ArrayList<>();
    signs.keySet().forEach(c -> columns.add(AlignedNumbers.of(c, wording.decimalSign())));
    AlignedNumbers values =
        AlignedNumbers.of(figures.stream().map(Figure::shown).toList(), wording.decimalSign());
    columns.add(values);
    String value = wording.text("limits.value");
    heads.add(values.unit().isEmpty() ? value : value + " (" + values.unit() + ")");
    Map<Figure, List<String>> byFigure = new LinkedHashMap<>();
    for (int i = 0; i < figures.size(); i++) {
      int row = i;
      byFigure.put(figures.get(i), columns.stream().map(c -> c.cells().get(row)).toList());
    }
    return new Sheet(ended(formula.toString()), heads, byFigure);
  }

  private static String ring(int index) {
    return String.valueOf((char) ('\u2460' + index));
  }

  /** The clauses in which something is calculated, or all if there are none. */
  private static List<Clause> calculations(List<Clause> clauses) {
    List<Clause> some = clauses.stream().filter(Clause::isCalculation).toList();
    return some.isEmpty() ? clauses : some;
  }

  /** What was done, sentence by sentence, without what came of it. */
  private static List<Clause> clauses(Figure figure, Sources sources) {
    return sources.steps(figure).stream()
        .filter(step -> step.kind() != WorkedLine.Kind.RESULT)
        .flatMap(step -> Clause.of(step).stream())
        .toList();
  }

  /** What came of it, such as "= 12 mm"; empty if it is not told so. */
  private static String result(Figure figure, Sources sources) {
    List<WorkedLine> steps = sources.steps(figure);
    WorkedLine last = steps.get(steps.size() - 1);
    // The tolerance stands where the figure does.
    return last.kind() != WorkedLine.Kind.RESULT
        ? ""
        : last.fragments().stream()
            .filter(f -> f.kind() != Fragment.Kind.TOLERANCE)
            .map(Fragment::inLine)
            .collect(Collectors.joining());
  }

  private static List<List<Clause.Token>> shape(Figure figure, Sources sources) {
    return clauses(figure, sources).stream().map(Clause::shape).toList();
  }
}
