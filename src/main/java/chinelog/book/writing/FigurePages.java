package chinelog.book.writing;

import chinelog.book.page.Manuscript;
import chinelog.book.writing.DataTable.Column;
import chinelog.edition.Edition.Entry;
import chinelog.edition.Figure;
import chinelog.markup.AlignedNumbers;
import chinelog.markup.Parts;
import chinelog.markup.Sources;
import chinelog.markup.Ways;
import chinelog.wording.Fragment;
import chinelog.wording.WorkedLine;
import java.util.ArrayList;
import java.util.Comparator;
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
  private static final int STEP_LINE = 100;

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
    int characters = Math.max(1, inOneLine(figure.working()).length());
    return (1 + Math.ceil((double) characters / STEP_LINE)) * STEP_LINE_MM
        + (isTitled ? TITLE_MM : 0);
  }

  private void list(String group, List<Figure> figures, boolean hasFullSize, DataTable table) {
    List<WorkedLine> before = List.of();
    Figure example = null;
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
      String told = figure.origin();
      boolean isAlike = false;
      if (!figure.working().isEmpty()) {
        List<WorkedLine> steps = sources.steps(figure);
        List<WorkedLine> given = given(steps);
        boolean isAsAbove = given.size() >= MANY && given.equals(before);
        told = inOneLine(isAsAbove ? shortened(steps) : steps);
        String own =
            example != null && Ways.areAlike(example, figure, sources)
                ? Ways.own(figure, example, sources)
                : told;
        isAlike = own.length() < told.length();
        if (isAlike) {
          told = words.shared().text("figures.alike", own);
        } else {
          example = figure;
        }
        before = given;
      }
      // The numbers beside the title leave the room below them to the words.
      out.open("div", "class", hasFullSize ? "step below two" : "step below").text(told);
      seeEntries(figure.entries());
      out.close().close();
      boolean isModel = !figure.model().isEmpty();
      number(table, 1, isTitled, value(figure, isModel, figure.model()));
      if (hasFullSize) {
        number(table, 2, isTitled, value(figure, !isModel, figure.fullSize()));
      }
      out.close();
      if (!isAlike) {
        index(figure.title(), id, figure);
      }
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
    List<AlignedNumbers> numbers =
        parts.aspects().stream().map(a -> parts.column(a, words.shared())).toList();
    for (int i = 0; i < numbers.size(); i++) {
      String unit = numbers.get(i).unit();
      String aspect = upper(parts.aspects().get(i));
      columns.add(Column.number(unit.isEmpty() ? aspect : aspect + " (" + unit + ")"));
    }
    boolean hasPages =
        parts.byPart().values().stream()
            .flatMap(of -> of.values().stream())
            .anyMatch(figure -> !figure.entries().isEmpty());
    if (hasPages) {
      columns.add(Column.number(words.say("figures.page")).wide(10));
    }
    List<Boolean> isNumber = columns.stream().map(Column::isNumber).toList();
    double textMm = setting.trim.textWidthMm() - DataTable.BESIDE_MM;
    for (WideColumns part : WideColumns.plan(cells(parts, columns, numbers), isNumber, textMm)) {
      parts(parts, columns, numbers, part);
    }
    waysOf(parts);
  }

  /** What is in each column, its head among it; a page number is never wider than its head. */
  private static List<List<String>> cells(
      Parts parts, List<Column> columns, List<AlignedNumbers> numbers) {
    List<List<String>> cells = new ArrayList<>();
    columns.forEach(column -> cells.add(new ArrayList<>(List.of(column.title()))));
    cells.get(0).addAll(parts.byPart().keySet());
    for (int i = 0; i < numbers.size(); i++) {
      cells.get(i + 1).addAll(numbers.get(i).cells());
    }
    return cells;
  }

  private void parts(
      Parts parts, List<Column> columns, List<AlignedNumbers> numbers, WideColumns part) {
    Map<String, Map<String, Figure>> rows = new LinkedHashMap<>(parts.byPart());
    List<String> all = List.copyOf(rows.keySet());
    rows.values().removeIf(figures -> isEmpty(figures, parts.aspects(), part));
    List<List<String>> under = rows.values().stream().map(FigurePages::underOf).toList();
    DataTable table = new DataTable(setting, under, columns, part);
    rows.forEach(
        (name, figures) -> {
          table.open("", underOf(figures), "");
          table.cell(0, name, underOf(figures));
          for (int i = 1; i < part.columns().size(); i++) {
            int column = part.columns().get(i) - 1;
            if (column < parts.aspects().size()) {
              String shown = numbers.get(column).cells().get(all.indexOf(name));
              figure(table, i, name, figures.get(parts.aspects().get(column)), shown);
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

  /** Whether a part has nothing in the columns of one of the tables that a wide one is laid in. */
  private static boolean isEmpty(
      Map<String, Figure> figures, List<String> aspects, WideColumns part) {
    return part.columns().stream()
        .filter(column -> column > 0 && column <= aspects.size())
        .noneMatch(column -> figures.containsKey(aspects.get(column - 1)));
  }

  private void figure(
      DataTable table, int column, String part, @Nullable Figure figure, String shown) {
    String id = figure == null ? "" : Anchors.figure(figure.name());
    table.openCell(column, id);
    out.text(shown).close();
    if (figure != null) {
      index(part, id, figure);
    }
  }

  /** How the figures of parts were come by, said once for all that were come by alike. */
  private void waysOf(Parts parts) {
    List<Figure> figures =
        parts.byPart().values().stream().flatMap(of -> of.values().stream()).toList();
    for (Ways.Way way : Ways.of(figures, sources, words.shared())) {
      Figure example = way.example();
      way("way", example).leaf("b", upper(aspectOf(example)));
      if (!way.alike().isEmpty()) {
        out.text(" (" + partOf(example) + ")");
      }
      out.text(". " + inOneLine(sources.steps(example)));
      if (!way.sheet().rows().isEmpty()) {
        out.text(". " + words.shared().text("figures.alike.columns", way.sheet().formula()))
            .close();
        sheet(way, parts.aspects());
      } else {
        out.close();
        lines(way);
      }
    }
  }

  /** The numbers of figures that were worked out like another, in rows; the same are said once. */
  private void lines(Ways.Way way) {
    Ways.lines(way, sources)
        .forEach(
            (own, figures) -> {
              String names = figures.stream().map(way::named).collect(Collectors.joining(", "));
              way("way own", figures.get(0)).leaf("b", names).text(" " + own).close();
            });
  }

  private Xhtml way(String kind, Figure figure) {
    String under = setting.parties(figure.under());
    return out.open("p", "class", kind, Manuscript.UNDER_ATTRIBUTE, under);
  }

  /** The numbers of figures that were worked out alike, in columns, what is said of each above. */
  private void sheet(Ways.Way way, List<String> aspects) {
    List<Column> columns = new ArrayList<>();
    columns.add(Column.text(words.say("figures.part")));
    way.sheet().heads().forEach(head -> columns.add(Column.number(head)));
    List<Figure> figures =
        way.sheet().figures().stream()
            .sorted(Comparator.comparingInt(figure -> aspects.indexOf(aspectOf(figure))))
            .toList();
    List<List<String>> cells = new ArrayList<>();
    columns.forEach(column -> cells.add(new ArrayList<>(List.of(column.title()))));
    for (Figure figure : figures) {
      cells.get(0).add(partOf(figure));
      List<String> numbers = way.sheet().numbers(figure);
      for (int i = 0; i < numbers.size(); i++) {
        cells.get(i + 1).add(numbers.get(i));
      }
    }
    List<Boolean> isNumber = columns.stream().map(Column::isNumber).toList();
    double textMm = setting.trim.textWidthMm() - DataTable.BESIDE_MM;
    for (WideColumns part : WideColumns.plan(cells, isNumber, textMm)) {
      sheet(figures, cells, way.isOfOne(), columns, part);
    }
  }

  private void sheet(
      List<Figure> figures,
      List<List<String>> cells,
      boolean isOfOne,
      List<Column> columns,
      WideColumns part) {
    List<List<String>> under = figures.stream().map(Figure::under).toList();
    DataTable table = new DataTable(setting, under, columns, part, DataTable.CLOSE);
    String title = "";
    for (int i = 0; i < figures.size(); i++) {
      String aspect = isOfOne ? "" : aspectOf(figures.get(i));
      boolean isTitled = !aspect.equals(title);
      title = aspect;
      table.open("", under.get(i), isTitled ? "titled" : "");
      table.openCell(0);
      if (isTitled) {
        out.leaf("h3", upper(aspect));
      }
      out.text(cells.get(0).get(i + 1));
      table.mark(under.get(i));
      out.close();
      for (int j = 1; j < part.columns().size(); j++) {
        number(table, j, isTitled, cells.get(part.columns().get(j)).get(i + 1));
      }
      out.close();
    }
    table.close();
  }

  private static String partOf(Figure figure) {
    return Objects.requireNonNull(figure.cell()).part();
  }

  private static String aspectOf(Figure figure) {
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
        boolean isEnded = line.charAt(line.length() - 1) == '.';
        if (isEnded && step.goesOn()) {
          line.setLength(line.length() - 1);
        }
        line.append(isEnded || step.goesOn() ? " " : "; ");
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
