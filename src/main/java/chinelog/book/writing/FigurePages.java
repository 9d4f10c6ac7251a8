package chinelog.book.writing;

import chinelog.book.writing.DataTable.Column;
import chinelog.edition.Edition.Entry;
import chinelog.edition.Figure;
import chinelog.markup.Parts;
import chinelog.markup.Sources;
import chinelog.markup.Ways;
import chinelog.wording.Fragment;
import chinelog.wording.WorkedLine;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Writes the figures of the appendices, each with how it was come by. */
final class FigurePages {

  /** So many figures that others were worked out from are named only once in a row. */
  private static final int MANY = 3;

  /** Characters in a line of how a figure was come by, and its height. */
  private static final int STEP_LINE = 52;

  private static final double STEP_LINE_MM = 4.4;

  private static final double TITLE_MM = 10;

  private final Setting setting;
  private final Xhtml out;
  private final BookWords words;
  private final Map<String, Entry> entries;
  private final Sources sources;

  FigurePages(Setting setting) {
    this.setting = setting;
    this.out = setting.out;
    this.words = setting.words;
    this.sources = Sources.of(setting.edition.figures());
    this.entries =
        setting.edition.entries().stream()
            .collect(
                Collectors.toMap(Entry::id, Function.identity(), (a, b) -> a, LinkedHashMap::new));
  }

  /** Writes figures group by group, under the groups' names. */
  void groups(List<Figure> figures) {
    // Small groups share a table: its head would otherwise be said again for every two or three.
    Map<String, List<Figure>> small = new LinkedHashMap<>();
    Parts.byGroup(figures)
        .forEach(
            (title, group) -> {
              if (Parts.of(group).byPart().isEmpty()) {
                small.put(title, group);
              } else {
                small(small);
                small.clear();
                setting.subheading(title);
                group(group);
              }
            });
    small(small);
    notes();
  }

  /** Groups with figures at full size first: the others, such as money, have no model's column. */
  private void small(Map<String, List<Figure>> groups) {
    Map<String, List<Figure>> sizes = new LinkedHashMap<>();
    Map<String, List<Figure>> values = new LinkedHashMap<>();
    groups.forEach(
        (title, group) -> {
          boolean hasFullSize = group.stream().anyMatch(f -> !f.fullSize().isEmpty());
          (hasFullSize ? sizes : values).put(title, group);
        });
    list(sizes);
    list(values);
  }

  /** Writes figures of one group: those of parts side by side, the others one below the other. */
  void group(List<Figure> figures) {
    Parts parts = Parts.of(figures);
    while (!parts.byPart().isEmpty()) {
      parts(parts);
      parts = Parts.of(parts.others());
    }
    list(Map.of("", parts.others()));
  }

  /** Writes a table of figures by the titles of their groups; "" for a group that needs none. */
  private void list(Map<String, List<Figure>> groups) {
    List<Figure> figures = groups.values().stream().flatMap(List::stream).toList();
    if (figures.isEmpty()) {
      return;
    }
    boolean hasFullSize = figures.stream().anyMatch(f -> !f.fullSize().isEmpty());
    List<Column> columns = new ArrayList<>();
    columns.add(Column.text(words.say("figures.figure")).wide(hasFullSize ? 60 : 80));
    columns.add(
        Column.number(words.say(hasFullSize ? "particulars.model" : "limits.value")).wide(20));
    if (hasFullSize) {
      columns.add(Column.number(words.say("particulars.full")).wide(20));
    }
    double firstMm = heightMm(figures.get(0), !groups.containsKey(""));
    DataTable table =
        new DataTable(setting, figures.stream().map(Figure::under).toList(), columns, firstMm);
    groups.forEach((title, group) -> list(title, group, hasFullSize, table));
    table.close();
  }

  /** About how high the row of a figure is. */
  private static double heightMm(Figure figure, boolean isTitled) {
    int characters = figure.origin().length() + inOneLine(figure.working()).length();
    return (1 + Math.ceil((double) characters / STEP_LINE)) * STEP_LINE_MM
        + (isTitled ? TITLE_MM : 0);
  }

  private void list(String group, List<Figure> figures, boolean hasFullSize, DataTable table) {
    List<WorkedLine> before = List.of();
    Figure last = null;
    for (Figure figure : figures) {
      String id = Anchors.figure(figure.name());
      boolean isTitled = !group.isEmpty() && figure.equals(figures.get(0));
      table.open(id, figure.under(), isTitled ? "titled" : "");
      table.openCell(0);
      if (isTitled) {
        // Within the first row, the title cannot be parted from it.
        out.leaf("h3", group);
      }
      out.text(figure.title());
      table.mark(figure.under());
      out.open("div", "class", "step").text(figure.origin());
      seeEntries(figure.entries());
      if (!figure.working().isEmpty()) {
        List<WorkedLine> steps = sources.steps(figure);
        List<WorkedLine> given = given(steps);
        boolean isAsAbove = given.size() >= MANY && given.equals(before);
        boolean isAlike = last != null && steps.size() > 1 && Ways.areAlike(last, figure, sources);
        String told =
            isAlike
                ? words.shared().text("figures.alike.above") + " " + steps.get(steps.size() - 1)
                : inOneLine(isAsAbove ? shortened(steps) : steps);
        out.text(". " + told);
        before = given;
        last = figure;
      }
      out.close().close();
      boolean isModel = !figure.model().isEmpty();
      number(table, 1, isTitled, value(figure, isModel, figure.model()));
      if (hasFullSize) {
        number(table, 2, isTitled, value(figure, !isModel, figure.fullSize()));
      }
      out.close();
      index(figure.title(), id, figure);
    }
  }

  /** A number; beside a title it is as far down as the words below the title. */
  private void number(DataTable table, int column, boolean isTitled, String text) {
    table.openCell(column);
    if (isTitled) {
      out.open("div", "class", "beside").close();
    }
    out.text(text).close();
  }

  /** What a figure was worked out from: between how it was and what came of it. */
  private static List<WorkedLine> given(List<WorkedLine> steps) {
    return steps.size() < 2 ? List.of() : steps.subList(1, steps.size() - 1);
  }

  private List<WorkedLine> shortened(List<WorkedLine> steps) {
    WorkedLine asAbove =
        WorkedLine.of(WorkedLine.Kind.GIVEN, Fragment.words(words.say("figures.as.above")));
    return List.of(steps.get(0), asAbove, steps.get(steps.size() - 1));
  }

  private void parts(Parts parts) {
    List<Column> columns = new ArrayList<>();
    columns.add(Column.text(words.say("figures.part")).wide(38));
    parts.aspects().forEach(aspect -> columns.add(Column.number(upper(aspect))));
    boolean hasPages =
        parts.byPart().values().stream()
            .flatMap(of -> of.values().stream())
            .anyMatch(figure -> !figure.entries().isEmpty());
    if (hasPages) {
      columns.add(Column.number(words.say("figures.page")).wide(10));
    }
    List<Boolean> isNumber = columns.stream().map(Column::isNumber).toList();
    double textMm = setting.trim.textWidthMm() - DataTable.BESIDE_MM;
    for (WideColumns part : WideColumns.plan(cells(parts, columns), isNumber, textMm)) {
      parts(parts, columns, part);
    }
    waysOf(parts);
  }

  /** What is in each column, its head among it; a page number is never wider than its head. */
  private static List<List<String>> cells(Parts parts, List<Column> columns) {
    List<List<String>> cells = new ArrayList<>();
    columns.forEach(column -> cells.add(new ArrayList<>(List.of(column.title()))));
    cells.get(0).addAll(parts.byPart().keySet());
    for (int i = 0; i < parts.aspects().size(); i++) {
      String aspect = parts.aspects().get(i);
      for (Map<String, Figure> figures : parts.byPart().values()) {
        Figure figure = figures.get(aspect);
        cells.get(i + 1).add(figure == null ? "" : valueOf(figure));
      }
    }
    return cells;
  }

  private void parts(Parts parts, List<Column> columns, WideColumns part) {
    List<List<String>> under = parts.byPart().values().stream().map(FigurePages::underOf).toList();
    DataTable table = new DataTable(setting, under, columns, part);
    parts
        .byPart()
        .forEach(
            (name, figures) -> {
              table.open("", underOf(figures), "");
              table.cell(0, name, underOf(figures));
              for (int i = 1; i < part.columns().size(); i++) {
                int column = part.columns().get(i) - 1;
                if (column < parts.aspects().size()) {
                  figure(table, i, name, figures.get(parts.aspects().get(column)));
                } else {
                  table.openCell(i);
                  pages(
                      figures.values().stream()
                          .flatMap(f -> f.entries().stream())
                          .collect(Collectors.toCollection(LinkedHashSet::new)));
                  out.close();
                }
              }
              out.close();
            });
    table.close();
  }

  private void figure(DataTable table, int column, String part, @Nullable Figure figure) {
    String id = figure == null ? "" : Anchors.figure(figure.name());
    table.openCell(column, id);
    out.text(figure == null ? "" : valueOf(figure));
    out.close();
    if (figure != null) {
      index(part, id, figure);
    }
  }

  /** How the figures of parts were come by, said once for all that were come by alike. */
  private void waysOf(Parts parts) {
    List<Figure> figures =
        parts.byPart().values().stream().flatMap(of -> of.values().stream()).toList();
    for (Ways.Way way : Ways.of(figures, sources)) {
      Figure example = way.example();
      out.open("p", "class", "way").leaf("b", upper(aspectOf(example)));
      if (!way.alike().isEmpty()) {
        out.text(" (" + Objects.requireNonNull(example.cell()).part() + ")");
      }
      out.text(". " + inOneLine(sources.steps(example)));
      List<String> alike = way.alike().stream().map(a -> aspectOf(a.figure())).distinct().toList();
      if (!alike.isEmpty()) {
        String told = String.join("; ", alike);
        out.text(". " + words.shared().text("figures.alike", told));
      }
      out.close();
    }
  }

  private String aspectOf(Figure figure) {
    return Objects.requireNonNull(figure.cell()).aspect();
  }

  /** What the numbers in brackets stand for. */
  void notes() {
    if (sources.notes().isEmpty()) {
      return;
    }
    setting.subheading(words.shared().text("figures.notes"));
    out.open("ol", "class", "sources");
    sources.notes().forEach(note -> out.leaf("li", note));
    out.close();
  }

  private void index(String word, String id, Figure figure) {
    setting.index.add(word, id);
    figure.entries().forEach(e -> setting.index.add(word, Anchors.entry(e)));
  }

  private static List<String> underOf(Map<String, Figure> figures) {
    return figures.values().stream().flatMap(f -> f.under().stream()).distinct().sorted().toList();
  }

  private static String valueOf(Figure figure) {
    boolean isModel = !figure.model().isEmpty();
    return value(figure, true, isModel ? figure.model() : figure.fullSize());
  }

  private static String value(Figure figure, boolean isToleranceHere, String value) {
    return isToleranceHere && !figure.tolerance().isEmpty() && !value.contains("±")
        ? value + " " + figure.tolerance()
        : value;
  }

  /** Steps that do not go on begin a sentence. */
  static String inOneLine(List<WorkedLine> steps) {
    StringBuilder line = new StringBuilder();
    for (WorkedLine step : steps) {
      if (line.length() > 0) {
        boolean goesOn = step.goesOn() || line.charAt(line.length() - 1) == '.';
        line.append(goesOn ? " " : "; ");
      }
      line.append(step.text());
    }
    return line.toString();
  }

  private static String upper(String words) {
    int first = words.offsetByCodePoints(0, 1);
    return words.substring(0, first).toUpperCase(java.util.Locale.ROOT) + words.substring(first);
  }

  private void seeEntries(List<String> ids) {
    for (String id : ids) {
      Entry entry = entries.get(id);
      if (entry != null) {
        String anchor = Anchors.entry(id);
        out.text(", ");
        link(anchor, words.say("page", setting.page(anchor)), entry);
      }
    }
  }

  private void pages(Set<String> ids) {
    boolean isFirst = true;
    for (String id : ids) {
      Entry entry = entries.get(id);
      if (entry != null) {
        out.text(isFirst ? "" : ", ");
        link(Anchors.entry(id), setting.page(Anchors.entry(id)), entry);
        isFirst = false;
      }
    }
  }

  private void link(String anchor, String shown, Entry entry) {
    out.leaf("a", shown, "href", "#" + anchor, "title", words.say("entry.goto", entry.title()));
  }
}
