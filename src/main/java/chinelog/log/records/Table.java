package chinelog.log.records;

import chinelog.label.Label;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A CSV file of tables.
 *
 * @param name file name without its ending, such as {@code offsets}
 * @param columns at least one
 * @param rows each as long as {@code columns}
 */
public record Table(String name, List<Column> columns, List<Row> rows, Label label, Place place) {

  /** Feet, inches and eighths, such as 2-7-4; a + or - after them is a sixteenth more or less. */
  public static final Pattern EIGHTHS =
      Pattern.compile("(?<feet>[0-9]{1,3})-(?<inches>[0-9]|1[01])-(?<eighths>[0-7])(?<sign>[+-])?");

  /**
   * This with some of its rows and columns.
   *
   * @param kept columns, from 0
   */
  public Table with(List<Integer> kept, List<Row> keptRows) {
    List<Row> narrowed =
        keptRows.stream()
            .map(r -> new Row(kept.stream().map(r.cells()::get).toList(), r.label(), r.place()))
            .toList();
    return new Table(name, kept.stream().map(columns::get).toList(), narrowed, label, place);
  }

  /**
   * A column.
   *
   * @param unit of the heading's brackets; {@link Unit#ONE} where none were written
   */
  public record Column(String name, Unit unit, Label label, Place place) {}

  public record Row(List<Cell> cells, Label label, Place place) {}

  /**
   * A cell.
   *
   * @param text as written
   * @param quantity its number in the column's unit; null where it is empty or not a number
   */
  public record Cell(String text, @Nullable Quantity quantity, Place place) {}
}
