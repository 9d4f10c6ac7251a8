package chinelog.reckon.trade;

import chinelog.log.records.Table;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Reads the columns of one table that an input names. */
final class Columns {

  private final String input;
  private final Table table;

  Columns(String input, Table table) throws TradeException {
    this.input = input;
    this.table = table;
    if (table.rows().isEmpty()) {
      throw new TradeException(
          input,
          Sentence.of("The table \"{0}\" has no rows.", table.name()),
          "Write at least one row below its heading.",
          table.place());
    }
  }

  int rows() {
    return table.rows().size();
  }

  List<Table.Column> headings() {
    return table.columns();
  }

  OptionalInt find(String column) {
    return IntStream.range(0, table.columns().size())
        .filter(i -> name(i).equals(column))
        .findFirst();
  }

  int index(String column) throws TradeException {
    return find(column).orElseThrow(() -> missing(column));
  }

  TradeException missing(String column) {
    return new TradeException(
        input,
        Sentence.of("The table \"{0}\" has no column \"{1}\".", table.name(), column),
        Sentence.of(
            "Add the column; the table has {0}.",
            table.columns().stream().map(Table.Column::name).collect(Collectors.joining(", "))),
        table.place());
  }

  private String name(int column) {
    return table.columns().get(column).name().strip().toLowerCase(Locale.ROOT);
  }

  /** The unit a column is written in. */
  Unit unit(String column) throws TradeException {
    return table.columns().get(index(column)).unit();
  }

  /** Every number of a column, in {@code unit}; none may be empty. */
  double[] numbers(String column, Unit unit) throws TradeException, QuantityException {
    int index = index(column);
    double[] all = new double[rows()];
    for (int row = 0; row < all.length; row++) {
      all[row] = number(row, index, unit);
      if (Double.isNaN(all[row])) {
        throw at(
            row, index, Sentence.of("A cell of \"{0}\" is empty.", column), "Write its number.");
      }
    }
    return all;
  }

  /** Every number of a column that may be left out as a whole, with one value in its stead. */
  double[] numbers(String column, Unit unit, double fallback)
      throws TradeException, QuantityException {
    if (find(column).isPresent()) {
      return numbers(column, unit);
    }
    double[] all = new double[rows()];
    Arrays.fill(all, fallback);
    return all;
  }

  /** A row's text in a column; the row's number, from 1, where there is no such column. */
  String text(int row, String column) {
    OptionalInt index = find(column);
    return index.isPresent()
        ? table.rows().get(row).cells().get(index.getAsInt()).text().strip()
        : String.valueOf(row + 1);
  }

  /** A cell's number in {@code unit}; NaN if the cell is empty. */
  double number(int row, int column, Unit unit) throws TradeException, QuantityException {
    Table.Cell cell = table.rows().get(row).cells().get(column);
    Quantity quantity = cell.quantity();
    if (quantity == null) {
      if (cell.text().isBlank()) {
        return Double.NaN;
      }
      throw at(
          row,
          column,
          Sentence.of("\"{0}\" is not a number.", cell.text()),
          Table.EIGHTHS.matcher(cell.text().strip()).matches()
              ? "Write [ft-in-8] in the heading if these are feet, inches and eighths."
              : "Write a number.");
    }
    Unit written = table.columns().get(column).unit();
    if (!quantity.unit().isCompatible(unit)) {
      throw at(
          row,
          column,
          Sentence.of(
              "The column \"{0}\" is in \"{1}\".", table.columns().get(column).name(), written),
          Sentence.of("Write its unit in the heading, such as [{0}].", unit));
    }
    return quantity.doubleIn(unit);
  }

  /** Refuses rows whose figures would get the same name. */
  void requireDistinct(String column) throws TradeException {
    Set<String> seen = new HashSet<>();
    for (int row = 0; row < rows(); row++) {
      String name = text(row, column);
      if (!seen.add(Offsets.factPart(name))) {
        throw at(
            row,
            Sentence.of("There is another {0} called \"{1}\".", column, name),
            Sentence.of("Give each {0} a name of its own.", column));
      }
    }
  }

  TradeException at(int row, int column, CharSequence what, CharSequence remedy) {
    return new TradeException(
        input, what, remedy, table.rows().get(row).cells().get(column).place());
  }

  TradeException at(int row, CharSequence what, CharSequence remedy) {
    return new TradeException(input, what, remedy, table.rows().get(row).place());
  }
}
