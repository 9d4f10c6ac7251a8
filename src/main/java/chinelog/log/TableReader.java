package chinelog.log;

import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.log.reading.Fields;
import chinelog.log.reading.MarkWatch;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Source;
import chinelog.log.reading.Values;
import chinelog.log.reading.Yaml;
import chinelog.log.records.Table;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads tables: RFC 4180, the first record names the columns, each as "name [unit]". */
final class TableReader {

  private static final Pattern HEADING = Pattern.compile("(.*?)\\s*(?:\\[([^\\[\\]]*)])?");
  private static final String UNDER = "under";
  private static final Pattern DECIMAL_COMMA = Pattern.compile("[+-]?[0-9]+,[0-9]+");
  private static final Pattern DECIMAL_POINT = Pattern.compile("[+-]?[0-9]+\\.[0-9]+");

  /** What stands for the unit of a column of feet, inches and eighths. */
  private static final Pattern IN_EIGHTHS = Pattern.compile("ft-in-(?:8|8ths|eighths)");

  private final Scope scope;
  private final Map<String, Fields> marks = new LinkedHashMap<>();
  private final Map<String, Yaml.Scalar> marked = new LinkedHashMap<>();

  /**
   * @param log whose key {@code tables} says what is under which agreement
   */
  TableReader(Fields log, Scope scope) {
    this.scope = scope;
    for (Yaml.Pair pair : log.pairs("tables")) {
      String name = pair.key().text();
      marks.put(name, Fields.of(pair.value(), scope, Label.NONE, "under", "columns"));
      marked.put(name, pair.key());
    }
  }

  List<Table> read() {
    List<Table> tables = new ArrayList<>();
    List<String> names = new ArrayList<>();
    scope
        .inventory()
        .tables()
        .forEach(
            (path, file) -> {
              String name = path.substring("tables/".length(), path.length() - ".csv".length());
              names.add(name);
              Source source = scope.inventory().read(file, path, scope.problems());
              Table table = source == null ? null : table(name, source);
              if (table != null) {
                tables.add(table);
              }
            });
    marked.forEach(
        (name, key) -> {
          if (!names.contains(name)) {
            scope.error(
                key.place(),
                Sentence.of("There is no table \"{0}\".", name),
                Suggestion.remedy(name, names));
          }
        });
    return tables;
  }

  private @Nullable Table table(String name, Source source) {
    MarkWatch.refuse(source, scope.problems());
    KeyWatch.refuseInRemarks(source, scope);
    List<List<CsvRecords.Field>> records =
        CsvRecords.read(CsvRecords.withoutRemarks(source), scope.problems());
    if (records.isEmpty() && scope.problems().hasErrorIn(source.file())) {
      return null;
    }
    if (records.isEmpty()) {
      scope.error(
          Place.of(source.file()),
          "This table is empty.",
          "Write a line with the names of its columns, such as \"station,x [mm]\".");
      return null;
    }
    Fields mark = marks.get(name);
    List<Table.Column> columns = columns(records.get(0), mark);
    boolean commas =
        hasDecimalCommas(records, CsvRecords.divider(CsvRecords.withoutRemarks(source)));
    int underColumn = -1;
    for (int i = 0; i < columns.size(); i++) {
      if (columns.get(i).name().equals(UNDER)) {
        underColumn = i;
      }
    }
    List<Table.Row> rows = new ArrayList<>();
    for (List<CsvRecords.Field> record : records.subList(1, records.size())) {
      if (record.size() == columns.size()) {
        rows.add(row(record, columns, underColumn, commas));
      } else {
        scope.error(
            record.get(0).place(),
            Sentence.of(
                "This row has {0}, but the table has {1} columns.",
                cells(record.size()), columns.size()),
            "Give each row one cell for each column; an empty cell still needs its comma.");
      }
    }
    if (underColumn >= 0) {
      columns.remove(underColumn);
    }
    return new Table(
        name,
        List.copyOf(columns),
        List.copyOf(rows),
        mark == null ? Label.NONE : mark.label(),
        Place.of(source.file()));
  }

  private static String cells(int count) {
    return count == 1 ? "1 cell" : count + " cells";
  }

  private List<Table.Column> columns(List<CsvRecords.Field> head, @Nullable Fields mark) {
    Map<String, Label> labels = new LinkedHashMap<>();
    Map<String, Place> places = new LinkedHashMap<>();
    for (Yaml.Pair pair : mark == null ? List.<Yaml.Pair>of() : mark.pairs("columns")) {
      Fields fields = Fields.of(pair.value(), scope, Label.NONE, "under");
      fields.require("under", "client");
      labels.put(pair.key().text(), fields.label());
      places.put(pair.key().text(), pair.key().place());
    }
    List<Table.Column> columns = new ArrayList<>();
    List<String> names = new ArrayList<>();
    for (CsvRecords.Field field : head) {
      Matcher m = HEADING.matcher(field.text().strip());
      String name = m.matches() ? m.group(1) : field.text().strip();
      String unit = m.matches() ? m.group(2) : null;
      if (name.isEmpty() || names.contains(name)) {
        scope.error(
            field.place(),
            name.isEmpty()
                ? "This column has no name."
                : Sentence.of("Two columns are named \"{0}\".", name),
            "Give each column a name of its own.");
      }
      names.add(name);
      Unit measured = unit(unit, field);
      Label label = labels.getOrDefault(name, mark == null ? Label.NONE : mark.label());
      columns.add(
          new Table.Column(
              name,
              measured,
              label.isNone() && measured.isMoney() ? Label.of(Agreement.OWN_MONEY) : label,
              field.place()));
    }
    places.forEach(
        (name, place) -> {
          if (!names.contains(name)) {
            scope.error(
                place,
                Sentence.of("The table has no column \"{0}\".", name),
                Suggestion.remedy(name, names));
          }
        });
    return columns;
  }

  private Unit unit(@Nullable String written, CsvRecords.Field field) {
    if (written == null) {
      return Unit.ONE;
    }
    if (IN_EIGHTHS.matcher(written).matches()) {
      return Unit.INCH;
    }
    try {
      return Unit.parse(written);
    } catch (QuantityException e) {
      scope.error(field.place(), e.what(), e.remedy());
      return Unit.ONE;
    }
  }

  private Table.Row row(
      List<CsvRecords.Field> record, List<Table.Column> columns, int underColumn, boolean commas) {
    List<Table.Cell> cells = new ArrayList<>();
    Label label = Label.NONE;
    for (int i = 0; i < record.size(); i++) {
      CsvRecords.Field field = record.get(i);
      if (i != underColumn) {
        String text = field.text().strip();
        cells.add(
            new Table.Cell(
                text,
                quantity(plain(text, commas, field.place()), columns.get(i), field.place()),
                field.place()));
      } else if (!field.text().isBlank()) {
        List<Yaml> words = new ArrayList<>();
        for (String word : field.text().strip().split("[,\\s]+")) {
          words.add(new Yaml.Scalar(word, true, Source.near(field.place(), word)));
        }
        label = new Values(scope).under(new Yaml.Sequence(words, field.place()));
      }
    }
    return new Table.Row(List.copyOf(cells), label, record.get(0).place());
  }

  /** Whether its numbers are written as where a comma is the decimal sign. */
  private static boolean hasDecimalCommas(List<List<CsvRecords.Field>> records, char divider) {
    return divider == ';'
        && records.stream()
            .flatMap(List::stream)
            .anyMatch(f -> DECIMAL_COMMA.matcher(f.text().strip()).matches());
  }

  private String plain(String text, boolean commas, Place place) {
    if (!commas) {
      return text;
    }
    if (DECIMAL_POINT.matcher(text).matches()) {
      scope.error(
          place,
          Sentence.of("\"{0}\" has a point, while other numbers of this table have a comma.", text),
          "Write all of them with the same decimal sign, and nothing between thousands.");
    }
    return DECIMAL_COMMA.matcher(text).matches() ? text.replace(',', '.') : text;
  }

  /** Such a cell in sixteenths of an inch. */
  private static String eighths(Matcher m) {
    int inches = 12 * Integer.parseInt(m.group("feet")) + Integer.parseInt(m.group("inches"));
    String sign = m.group("sign");
    int sixteenths =
        2 * Integer.parseInt(m.group("eighths")) + (sign == null ? 0 : sign.equals("+") ? 1 : -1);
    return 16 * inches + sixteenths + "/16 in";
  }

  private @Nullable Quantity quantity(String written, Table.Column column, Place place) {
    Unit unit = column.unit();
    Matcher eighths = Table.EIGHTHS.matcher(written);
    String text = unit.equals(Unit.INCH) && eighths.matches() ? eighths(eighths) : written;
    if (text.isEmpty()) {
      return null;
    }
    try {
      Quantity number = Quantity.parse(text);
      if (number.unit().equals(Unit.ONE)) {
        return Quantity.parse(text + " " + unit.symbol());
      }
      return unit.equals(Unit.ONE) ? number : number.in(unit);
    } catch (QuantityException e) {
      if (!unit.equals(Unit.ONE)) {
        scope.error(
            place,
            Sentence.of("\"{0}\" is not a number of {1}.", text, unit.symbol()),
            Table.EIGHTHS.matcher(text).matches()
                ? "Write [ft-in-8] in the heading if these are feet, inches and eighths."
                : "Write a number with a decimal point, or leave the cell empty.");
      }
      return null;
    }
  }
}
