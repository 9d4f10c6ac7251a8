package chinelog.book;

import chinelog.book.DataTable.Column;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Rows of plain cells, written as a table without the columns that have nothing in them. */
final class Rows {

  private final Setting setting;
  private final List<Column> columns;
  private final List<Row> rows = new ArrayList<>();
  private final List<String> total = new ArrayList<>();

  private record Row(String id, List<String> under, String kind, List<String> cells) {}

  Rows(Setting setting, Column... columns) {
    this.setting = setting;
    this.columns = List.of(columns);
  }

  void add(String id, List<String> under, String kind, String... cells) {
    rows.add(new Row(id, under, kind, List.of(cells)));
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
    DataTable table =
        new DataTable(
            setting,
            rows.stream().map(Row::under).toList(),
            kept.stream().map(columns::get).toList());
    for (Row row : rows) {
      table.open(row.id, row.under, row.kind);
      for (int i = 0; i < kept.size(); i++) {
        table.cell(i, row.cells.get(kept.get(i)), i == 0 ? row.under : List.of());
      }
      setting.out.close();
    }
    if (!total.isEmpty()) {
      table.total(kept.stream().map(total::get).toArray(String[]::new));
    }
    table.close();
  }
}
