package chinelog.withhold;

import chinelog.label.Label;
import chinelog.log.records.Log;
import chinelog.log.records.Table;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import chinelog.reckon.formula.Expression;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * The cells of the log's tables as quantities, so that a total of a column and all cells but one
 * give that one away like any other figure.
 */
final class Cells {

  /** Which of a column is the least or the greatest is no secret of one cell. */
  private static final Set<String> TOLD_APART = Set.of("min", "max", "nearest");

  private final Map<String, Cell> byName = new TreeMap<>();

  /**
   * A cell that holds a figure.
   *
   * @param label of its table, row and column
   */
  record Cell(Quantity value, Label label, Place place) {}

  Cells(Log log) {
    for (Table table : log.tables()) {
      for (Table.Row row : table.rows()) {
        for (int i = 0; i < row.cells().size(); i++) {
          Quantity value = row.cells().get(i).quantity();
          Label label = table.label().join(row.label()).join(table.columns().get(i).label());
          Place place = row.cells().get(i).place();
          if (value != null) {
            byName.put(place.toString(), new Cell(value, label, place));
          }
        }
      }
    }
  }

  Optional<Cell> find(String name) {
    return Optional.ofNullable(byName.get(name));
  }

  /** The formula with the names of cells in place of what was taken from them. */
  Expression named(Expression formula) {
    if (byName.isEmpty()) {
      return formula;
    }
    if (formula instanceof Expression.Literal literal && byName.containsKey(literal.cell())) {
      return new Expression.Name(literal.cell());
    }
    if (formula instanceof Expression.Call call
        && (call.arguments().size() == 1 || TOLD_APART.contains(call.function()))) {
      // A release of the only figure of a column was given for that figure.
      return call;
    }
    return formula.withParts(this::named);
  }
}
