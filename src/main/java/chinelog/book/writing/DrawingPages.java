package chinelog.book.writing;

import chinelog.book.page.Manuscript;
import chinelog.book.writing.DataTable.Column;
import chinelog.edition.Drawing;
import java.util.ArrayList;
import java.util.List;

/** Writes the drawings that lead the figures, each with its key, and those of entries. */
final class DrawingPages {

  private final Setting setting;
  private final Xhtml out;

  DrawingPages(Setting setting) {
    this.setting = setting;
    this.out = setting.out;
  }

  void write(Drawing drawing) {
    chart(drawing, true);
    setting.index.add(drawing.title(), id(drawing));
    // What the others show stands among the figures and the hours.
    if (hasKey(drawing)) {
      key(drawing);
    }
  }

  /** Within an entry, where what it shows is said below it. */
  void writeIn(Drawing drawing) {
    chart(drawing, false);
  }

  private static String id(Drawing drawing) {
    return "drawing-" + drawing.id();
  }

  private void chart(Drawing drawing, boolean isTitled) {
    out.empty("div", "class", "gap above");
    out.open(
        "div",
        "class",
        "chart",
        "id",
        id(drawing),
        Manuscript.UNDER_ATTRIBUTE,
        setting.parties(drawing.under()));
    if (isTitled) {
      out.leaf("h3", drawing.title());
    }
    setting.tag(drawing.under());
    out.drawing(setting.drawing(drawing));
    out.leaf("p", drawing.description(), "class", "said");
    out.close();
  }

  static boolean hasKey(Drawing drawing) {
    return drawing.table().isKey() && !drawing.table().rows().isEmpty();
  }

  private void key(Drawing drawing) {
    List<Column> columns = new ArrayList<>();
    List<String> head = drawing.table().head();
    for (int i = 0; i < head.size(); i++) {
      columns.add(i == 0 ? Column.text(head.get(i)).wide(30) : Column.number(head.get(i)));
    }
    Rows rows = new Rows(setting, columns.toArray(Column[]::new));
    for (List<String> row : drawing.table().rows()) {
      rows.add("", drawing.under(), "", row.toArray(String[]::new));
    }
    rows.close();
    rows.write();
  }
}
