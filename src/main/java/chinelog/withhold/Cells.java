package chinelog.withhold;

import chinelog.label.Label;
import chinelog.log.records.Log;
import chinelog.log.records.Table;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import chinelog.reckon.formula.Expression;
import chinelog.reckon.formula.Formula;
import chinelog.withhold.derive.Derivability;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * The cells of the log's tables as quantities, so that a total of a column and all cells but one
 * give that one away like any other figure, whether a formula or the maker's own row tells it.
 */
final class Cells {

  private static final Set<String> CHOOSING = Set.of("min", "max", "nearest");

  private final Map<String, Cell> byName = new TreeMap<>();
  private final List<Derivability.Relation> relations = new ArrayList<>();

  /**
   * A cell that holds a figure.
   *
   * @param label of its table, row and column
   * @param exact its value in coherent units; of a total, before it was rounded
   * @param step of its last digit where it is a total, in coherent units; else 0
   */
  record Cell(Quantity value, Label label, Place place, double exact, double step) {}

  private final Predicate<Label> isSeen;

  /**
   * @param isSeen whether readers may see what is under a label
   */
  Cells(Log log, Predicate<Label> isSeen) {
    this.isSeen = isSeen;
    for (Table table : log.tables()) {
      for (Table.Row row : table.rows()) {
        for (int i = 0; i < row.cells().size(); i++) {
          Quantity value = row.cells().get(i).quantity();
          Label label = table.label().join(row.label()).join(table.columns().get(i).label());
          Place place = row.cells().get(i).place();
          if (value != null) {
            byName.put(place.toString(), new Cell(value, label, place, value.coherent(), 0));
          }
        }
      }
      for (TypedTotals.Total total : TypedTotals.in(table)) {
        byName.computeIfPresent(
            total.cell(),
            (name, cell) ->
                new Cell(
                    cell.value,
                    cell.label,
                    cell.place,
                    total.value(),
                    TypedTotals.step(cell.value)));
        if (tells(total.formula())) {
          relations.add(new Derivability.Relation(total.cell(), total.formula()));
        }
      }
    }
  }

  /** What the tables' own totals say of their other cells. */
  List<Derivability.Relation> relations() {
    return List.copyOf(relations);
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
    // A release of the only figure of a column was given for that figure.
    if (formula instanceof Expression.Call call && call.arguments().size() == 1) {
      return call;
    }
    Expression named = formula.withParts(this::named);
    return tells(named) ? named : formula;
  }

  /**
   * Which of several is the least or the greatest is no secret of one of them; where only one of
   * them is withheld, it is.
   */
  private boolean tells(Expression formula) {
    if (!(formula instanceof Expression.Call call) || !CHOOSING.contains(call.function())) {
      return true;
    }
    long hidden =
        Formula.names(formula).stream()
            .filter(n -> find(n).filter(c -> !isSeen.test(c.label)).isPresent())
            .count();
    return hidden == 1 && !call.function().equals("nearest");
  }
}
