package chinelog.withhold;

import chinelog.log.records.Table;
import chinelog.quantity.Quantity;
import chinelog.reckon.formula.Expression;
import chinelog.wording.Accents;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Cells of a table in which its maker wrote what others come to: a row "total" or "fastest", a
 * column "mean", or a last row that is the sum of all above it.
 *
 * <p>Such a word counts only where the figures bear it out.
 */
final class TypedTotals {

  /** A last row without a word for it is a sum if it is that of so many. */
  private static final int NO_CHANCE = 3;

  private static final double SAME = 1e-9;
  private static final Pattern NO_LETTERS = Pattern.compile("[^\\p{L}]+");

  /** The functions that a word may stand for, by word. */
  private static final Map<String, List<String>> WORDS = words();

  private TypedTotals() {}

  /**
   * A cell that holds what others come to.
   *
   * @param formula over the places of the others
   * @param value what they come to, in coherent units, before it was rounded
   */
  record Total(String cell, Expression formula, double value) {}

  private static Map<String, List<String>> words() {
    Map<String, List<String>> words = new HashMap<>();
    try (InputStream in = TypedTotals.class.getResourceAsStream("total-words.txt")) {
      String text = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
      for (String line : text.lines().filter(l -> !l.startsWith("#")).toList()) {
        int colon = line.indexOf(':');
        List<String> functions = List.of(line.substring(0, colon).split(" "));
        for (String word : line.substring(colon + 1).strip().split(" ")) {
          words.put(word, functions);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return words;
  }

  static List<Total> in(Table table) {
    List<Total> totals = new ArrayList<>();
    List<List<String>> ofRows = table.rows().stream().map(TypedTotals::functions).toList();
    List<List<String>> ofColumns = table.columns().stream().map(c -> functions(c.name())).toList();
    for (int column = 0; column < ofColumns.size(); column++) {
      List<Table.Cell> above = new ArrayList<>();
      List<Table.Cell> since = new ArrayList<>();
      for (int row = 0; row < ofRows.size(); row++) {
        Table.Cell cell = table.rows().get(row).cells().get(column);
        List<String> functions = ofRows.get(row);
        boolean last = row == ofRows.size() - 1 && above.size() >= NO_CHANCE;
        if (functions.isEmpty() && last) {
          find(cell, List.of("sum"), above).ifPresent(totals::add);
        } else if (functions.isEmpty()) {
          above.add(cell);
          since.add(cell);
        } else {
          find(cell, functions, since)
              .or(() -> find(cell, functions, above))
              .ifPresent(totals::add);
          since.clear();
        }
      }
    }
    for (Table.Row row : table.rows()) {
      List<Table.Cell> others = new ArrayList<>();
      for (int column = 0; column < ofColumns.size(); column++) {
        if (ofColumns.get(column).isEmpty()) {
          others.add(row.cells().get(column));
        }
      }
      for (int column = 0; column < ofColumns.size(); column++) {
        find(row.cells().get(column), ofColumns.get(column), others).ifPresent(totals::add);
      }
    }
    return totals;
  }

  private static List<String> functions(Table.Row row) {
    return row.cells().stream()
        .filter(c -> c.quantity() == null)
        .map(c -> functions(c.text()))
        .filter(f -> !f.isEmpty())
        .findFirst()
        .orElse(List.of());
  }

  private static List<String> functions(String text) {
    return NO_LETTERS
        .splitAsStream(Accents.off(text).toLowerCase(Locale.ROOT))
        .map(word -> WORDS.getOrDefault(word, List.of()))
        .filter(f -> !f.isEmpty())
        .findFirst()
        .orElse(List.of());
  }

  private static Optional<Total> find(
      Table.Cell cell, List<String> functions, List<Table.Cell> others) {
    Quantity typed = cell.quantity();
    List<Table.Cell> parts =
        others.stream().filter(o -> !o.equals(cell) && isOfOneKind(o.quantity(), typed)).toList();
    if (typed == null || parts.size() < 2) {
      return Optional.empty();
    }
    double[] values = parts.stream().mapToDouble(p -> quantity(p).coherent()).toArray();
    for (String function : functions) {
      double value = value(function, values);
      double reach = step(typed) / 2 + SAME * Math.abs(value);
      if (value != 0 && Math.abs(value - typed.coherent()) <= reach) {
        List<Expression> names =
            parts.stream().<Expression>map(p -> new Expression.Name(p.place().toString())).toList();
        return Optional.of(
            new Total(cell.place().toString(), new Expression.Call(function, names), value));
      }
    }
    return Optional.empty();
  }

  private static Quantity quantity(Table.Cell cell) {
    return Objects.requireNonNull(cell.quantity());
  }

  private static boolean isOfOneKind(@Nullable Quantity part, @Nullable Quantity total) {
    return part != null && total != null && part.unit().isCompatible(total.unit());
  }

  private static double value(String function, double[] of) {
    DoubleSummaryStatistics all = Arrays.stream(of).summaryStatistics();
    return switch (function) {
      case "sum" -> all.getSum();
      case "mean" -> all.getAverage();
      case "min" -> all.getMin();
      default -> all.getMax();
    };
  }

  /** Of the last digit written. */
  static double step(Quantity typed) {
    BigDecimal digit = BigDecimal.ONE.movePointLeft(Math.max(0, typed.value().scale()));
    return Quantity.of(digit, typed.unit()).coherent();
  }
}
