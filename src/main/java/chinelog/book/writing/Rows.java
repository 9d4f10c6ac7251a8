package chinelog.book.writing;

import chinelog.book.writing.DataTable.Column;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Rows of plain cells, written as a table without the columns that have nothing in them. */
final class Rows {

  private final Setting setting;
  private final List<Column> columns;
  private final List<Row> rows = new ArrayList<>();
  private final List<String> total = new ArrayList<>();

  private String kind = "";

  private static final String NO_BREAK = "\u00a0";

  private record Row(String id, List<String> under, String kind, List<String> cells) {}

  Rows(Setting setting, Column... columns) {
    this.setting = setting;
    this.columns = List.of(columns);
  }

  void add(String id, List<String> under, String kind, String... cells) {
    rows.add(new Row(id, under, kind, List.of(cells)));
  }

  /** Sets the rows closer than others are. */
  void close() {
    kind = DataTable.CLOSE;
  }

  void total(String... cells) {
    total.addAll(List.of(cells));
  }

  void write() {
    List<Integer> kept =
        IntStream.range(0, columns.size())
            .filter(c -> c == 0 || rows.stream().anyMatch(r -> !r.cells.get(c).isEmpty()))
            .boxed()
            .toList();
    List<Column> shown = kept.stream().map(columns::get).toList();
    List<List<String>> cells = kept.stream().map(this::cells).toList();
    List<Boolean> isNumber = shown.stream().map(Column::isNumber).toList();
    for (WideColumns part :
        WideColumns.plan(cells, isNumber, setting.trim.textWidthMm() - DataTable.BESIDE_MM)) {
      write(part, kept, shown);
    }
  }

  private List<String> cells(int column) {
    List<String> cells = new ArrayList<>();
    cells.add(columns.get(column).title());
    for (Row row : rows) {
      // The mark of what is under an agreement stands in the first column.
      String mark =
          column == 0 && !row.under.isEmpty() ? NO_BREAK + setting.parties(row.under) : "";
      cells.add(row.cells.get(column) + mark);
    }
    if (!total.isEmpty()) {
      cells.add(total.get(column));
    }
    return cells;
  }

  private void write(WideColumns part, List<Integer> kept, List<Column> shown) {
    List<List<String>> under = rows.stream().map(Row::under).toList();
    DataTable table = new DataTable(setting, under, shown, part, kind);
    boolean isFirst = part.columns().size() < 2 || part.columns().get(1) == 1;
    for (Row row : rows) {
      table.open(isFirst ? row.id : "", row.under, row.kind);
      for (int i = 0; i < part.columns().size(); i++) {
        String cell = row.cells.get(kept.get(part.columns().get(i)));
        table.cell(i, cell, i == 0 ? row.under : List.of());
      }
      setting.out.close();
    }
    if (!total.isEmpty()) {
      table.total(part.columns().stream().map(kept::get).map(total::get).toArray(String[]::new));
    }
    table.close();
  }
}
