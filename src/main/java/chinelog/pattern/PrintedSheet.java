package chinelog.pattern;

import chinelog.edition.Pattern;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One sheet to be printed.
 *
 * @param parts on it, whole or in part
 * @param tile which part of one large pattern it is; null where all parts are whole
 */
record PrintedSheet(PaperSize paper, List<Placed> parts, @Nullable Tile tile) {

  PrintedSheet {
    parts = List.copyOf(parts);
  }

  List<String> titles() {
    return parts.stream().map(Placed::pattern).map(Pattern::title).toList();
  }

  /**
   * One of the sheets that a large pattern is printed on, to be joined to its neighbours.
   *
   * @param column from 0 at the left
   * @param row from 0 at the top
   * @param overlap with each neighbour, in mm
   */
  record Tile(int column, int row, int columns, int rows, double overlap) {

    String name() {
      return name(column, row);
    }

    /** Such as {@code B3}: a letter for the row, a number for the column. */
    static String name(int column, int row) {
      return letters(row) + (column + 1);
    }

    private static String letters(int row) {
      String last = String.valueOf((char) ('A' + row % 26));
      return row < 26 ? last : letters(row / 26 - 1) + last;
    }
  }
}
