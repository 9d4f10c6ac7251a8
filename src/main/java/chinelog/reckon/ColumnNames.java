package chinelog.reckon;

import chinelog.label.Label;
import chinelog.log.records.Log;
import chinelog.log.records.Table;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.reckon.formula.Expression;
import chinelog.reckon.formula.Formula;
import chinelog.reckon.formula.Functions;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Puts the figures of a table's column into a formula that names it, such as {@code
 * mean(runs.time)} for the column "time [s]" of {@code tables/runs.csv}.
 *
 * <p>A fact of the same name goes before.
 */
final class ColumnNames {

  private final Map<String, Found> columns = new HashMap<>();
  private final Map<String, Table> tables = new HashMap<>();
  private final Set<Found> read = new HashSet<>();

  ColumnNames(Log log) {
    for (Table table : log.tables()) {
      tables.put(table.name(), table);
      for (int i = 0; i < table.columns().size(); i++) {
        String name = part(table.name()) + "." + part(table.columns().get(i).name());
        columns.putIfAbsent(name, new Found(table.name(), i));
      }
    }
    log.statements().forEach(s -> columns.remove(s.name()));
  }

  /**
   * A formula with figures for its columns.
   *
   * @param label of all that these figures stand in
   */
  record Filled(Formula formula, Label label) {}

  /**
   * @param formula as written
   * @throws QuantityException saying where a column stands that cannot be taken for a figure
   */
  Filled fill(Formula formula) throws QuantityException {
    if (columns.isEmpty() || Formula.nameParts(formula.tree()).stream().noneMatch(this::isOne)) {
      return new Filled(formula, Label.NONE);
    }
    Filling filling = new Filling(formula);
    Expression tree = filling.fill(formula.tree());
    return new Filled(new Formula(formula.text(), tree, filling.index), filling.label);
  }

  /** Whether a formula filled so far names this column. */
  boolean reads(Table table, int column) {
    return read.contains(new Found(table.name(), column));
  }

  private boolean isOne(Expression.Name name) {
    return find(name.name()).isPresent();
  }

  private record Found(String table, int column) {}

  private Optional<Found> find(String name) {
    return Optional.ofNullable(columns.get(name));
  }

  /** As part of a fact's name: small letters and digits, {@code _} for all else. */
  private static String part(String name) {
    return name.strip().toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}0-9]+", "_");
  }

  private final class Filling {
    private final Formula formula;
    private final Map<Expression, Integer> index = new IdentityHashMap<>();
    private Label label = Label.NONE;

    Filling(Formula formula) {
      this.formula = formula;
      index.putAll(formula.index());
    }

    private <E extends Expression> E placed(E made, Expression from) {
      index.put(made, formula.indexOf(from));
      return made;
    }

    Expression fill(Expression part) throws QuantityException {
      if (part instanceof Expression.Negation n) {
        return placed(new Expression.Negation(fill(n.of())), part);
      }
      if (part instanceof Expression.Binary b) {
        return placed(new Expression.Binary(b.operator(), fill(b.left()), fill(b.right())), part);
      }
      if (part instanceof Expression.Call call) {
        List<Expression> arguments = new ArrayList<>();
        for (Expression argument : call.arguments()) {
          Optional<Found> found =
              argument instanceof Expression.Name name ? find(name.name()) : Optional.empty();
          if (found.isPresent() && Functions.takesColumn(call.function())) {
            arguments.addAll(figures(found.get(), argument));
          } else {
            arguments.add(fill(argument));
          }
        }
        if (!call.function().equals(Functions.IN)) {
          Functions.checkCount(call.function(), arguments.size(), formula.indexOf(call));
        }
        return placed(new Expression.Call(call.function(), List.copyOf(arguments)), part);
      }
      if (part instanceof Expression.Name name && isOne(name)) {
        throw new QuantityException(
            Sentence.of("\"{0}\" is a column of a table, not one figure.", name.name()),
            Sentence.of("Write what you want of it, such as mean({0}).", name.name()),
            formula.indexOf(part));
      }
      return part;
    }

    private List<Expression> figures(Found found, Expression name) throws QuantityException {
      Table table = tables.get(found.table());
      if (table == null) {
        throw new IllegalStateException(found.table());
      }
      read.add(found);
      Table.Column column = table.columns().get(found.column());
      label = label.join(table.label()).join(column.label());
      List<Expression> figures = new ArrayList<>();
      for (Table.Row row : table.rows()) {
        Table.Cell cell = row.cells().get(found.column());
        Quantity figure = cell.quantity();
        label = label.join(row.label());
        if (figure != null) {
          String place = cell.place().toString();
          figures.add(placed(new Expression.Literal(figure, place), name));
        } else if (!cell.text().isEmpty()) {
          throw new QuantityException(
              Sentence.of("\"{0}\" ({1}) is not a number.", cell.text(), cell.place()),
              "Write a number there, or leave the cell empty.",
              formula.indexOf(name));
        }
      }
      if (figures.isEmpty()) {
        throw new QuantityException(
            Sentence.of("The column \"{0}\" ({1}) holds no figure.", column.name(), column.place()),
            "Write one at least.",
            formula.indexOf(name));
      }
      return figures;
    }
  }
}
