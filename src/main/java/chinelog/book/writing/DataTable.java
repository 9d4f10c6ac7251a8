package chinelog.book.writing;

import chinelog.book.page.Manuscript;
import chinelog.book.page.Trim;
import java.util.ArrayList;
import java.util.List;

/** A table of the appendices, its heads repeated on every page that it reaches. */
final class DataTable {

  /** A table is kept on one page if there are so many millimetres of it for each row. */
  static final double WHOLE_MM = 14;

  /** Text that follows numbers stands this far from them. */
  static final double BESIDE_MM = 5;

  /** A table of more rows is higher than the room that is kept for its beginning. */
  private static final int FEW = 5;

  /** The head of a table, with what may stand above it. */
  private static final double HEAD_MM = 13;

  /** A row of two lines. */
  private static final double ROW_MM = 11;

  /**
   * A long table is written in bodies of so many rows: on every page that a body reaches, the
   * layout goes through all of its rows anew.
   */
  private static final int BODY = 60;

  /** So many rows at the end of a table stay together, that none stands alone on a page. */
  private static final int KEPT = 2;

  private final Setting setting;
  private final Xhtml out;
  private final List<Column> columns;

  /** Whether all rows are under the same agreements, which is then said once, above. */
  private final boolean isMarkedAbove;

  private final int rows;
  private int rowsBegun;

  /** Tables of nothing but numbers, whose rows stand closer. */
  static final String CLOSE = " close";

  /** A column; its cells stand to the right if they are numbers. */
  record Column(String title, boolean isNumber, String width) {
    static Column text(String title) {
      return new Column(title, false, "");
    }

    static Column number(String title) {
      return new Column(title, true, "");
    }

    Column wide(int percent) {
      return new Column(title, isNumber, "width:" + percent + "%");
    }
  }

  /** Begins one of the tables that a wide one is laid in; its columns are those of the wide one. */
  DataTable(Setting setting, List<List<String>> rows, List<Column> columns, WideColumns part) {
    this(setting, rows, columns, part, "");
  }

  /** The same, with a class of its own, such as {@link #CLOSE}. */
  DataTable(
      Setting setting,
      List<List<String>> rows,
      List<Column> columns,
      WideColumns part,
      String kind) {
    this(setting, rows, chosen(columns, part), ROW_MM, part.kind() + kind);
  }

  private static List<Column> chosen(List<Column> columns, WideColumns part) {
    List<Column> chosen = new ArrayList<>();
    for (int i = 0; i < part.columns().size(); i++) {
      Column column = columns.get(part.columns().get(i));
      String width =
          part.widthsMm().isEmpty() ? column.width : "width:" + Trim.mm(part.widthsMm().get(i));
      chosen.add(new Column(column.title, column.isNumber, width));
    }
    return chosen;
  }

  /**
   * Begins a table.
   *
   * @param rows what each of its rows is under
   * @param firstMm about how high its first row is
   */
  DataTable(Setting setting, List<List<String>> rows, List<Column> columns, double firstMm) {
    this(setting, rows, columns, firstMm, "");
  }

  private DataTable(
      Setting setting, List<List<String>> rows, List<Column> columns, double firstMm, String kind) {
    this.setting = setting;
    this.out = setting.out;
    this.columns = columns;
    this.rows = rows.size();
    this.isMarkedAbove = rows.size() > 1 && rows.stream().distinct().count() == 1;
    // The layout keeps room for the beginning of a box, but not for that of a table.
    String room = "-fs-page-break-min-height:" + Trim.mm(HEAD_MM + firstMm + ROW_MM);
    out.open("div", "class", "long", "style", rows.size() > FEW ? room : "");
    if (isMarkedAbove) {
      setting.tag(rows.get(0));
    }
    String id = setting.nextTable();
    boolean isWhole = firstMm <= ROW_MM ? setting.isWhole(id, rows.size()) : rows.size() < FEW;
    out.open("table", "id", id, "class", (isWhole ? "data whole" : "data") + fixed(columns) + kind)
        .open("thead")
        .open("tr");
    for (int i = 0; i < columns.size(); i++) {
      Column column = columns.get(i);
      out.leaf("th", column.title, "scope", "col", "class", kind(i), "style", column.width);
    }
    out.close().close().open("tbody");
  }

  /** Tables of the same columns that follow each other keep them in line. */
  private static String fixed(List<Column> columns) {
    long open = columns.stream().filter(c -> c.width.isEmpty()).count();
    return open <= 1 ? " fixed" : "";
  }

  /** The last row: it is not a {@code tfoot}, which would be repeated on each page. */
  void total(String... cells) {
    open("", List.of(), "total");
    for (int i = 0; i < cells.length; i++) {
      cell(i, cells[i], List.of());
    }
    out.close();
  }

  /** Begins a row whose cells are written one by one. */
  void open(String id, List<String> under, String kind) {
    if (rowsBegun == rows - KEPT && rowsBegun > 0) {
      out.close().open("tbody", "class", "end");
    } else {
      nextRow(out, rowsBegun);
    }
    rowsBegun++;
    out.open("tr", "id", id, "class", kind, Manuscript.UNDER_ATTRIBUTE, setting.parties(under));
  }

  void cell(int column, String text, List<String> under) {
    openCell(column);
    out.text(text);
    mark(under);
    out.close();
  }

  /** Marks what was written as under agreements, unless all of the table is. */
  void mark(List<String> under) {
    if (!isMarkedAbove) {
      setting.shortTag(under);
    }
  }

  void openCell(int column) {
    openCell(column, "");
  }

  void openCell(int column, String id) {
    boolean isHead = column == 0;
    out.open(isHead ? "th" : "td", "scope", isHead ? "row" : "", "class", kind(column), "id", id);
  }

  /** Text after numbers needs room between. */
  private String kind(int column) {
    if (columns.get(column).isNumber) {
      return "n";
    }
    return column > 0 && columns.get(column - 1).isNumber ? "after" : "";
  }

  void close() {
    out.close().close().close();
  }

  /**
   * Begins another body of a table where one is due; to be called before each row.
   *
   * @param rowsBefore how many rows the table has so far
   */
  static void nextRow(Xhtml out, int rowsBefore) {
    if (rowsBefore > 0 && rowsBefore % BODY == 0) {
      out.close().open("tbody");
    }
  }
}
