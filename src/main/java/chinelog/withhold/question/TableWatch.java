package chinelog.withhold.question;

import chinelog.label.Label;
import chinelog.log.records.Log;
import chinelog.log.records.Marked;
import chinelog.log.records.Table;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Looks for runs of figures that stand side by side in a table that some readers do not see: in a
 * list, in a table of a note, in another table of the log; in any unit, at either size, forwards or
 * backwards.
 */
final class TableWatch {

  /** So many figures that follow each other as in the table are no chance. */
  private static final int RUN = 4;

  private static final int TELLING = 3;

  /** A figure of one digit tells nothing. */
  private static final int TWO_DIGITS = 10;

  /** Figures as fine as this are known again where only every second or third was copied. */
  private static final int THREE_DIGITS = 100;

  private static final int MOST_STRIDE = 3;

  /** Half-breadths may be told as breadths. */
  private static final double[] WHOLES = {1, 2, 0.5};

  private static final double SAME = 1e-9;

  private static final Pattern NUMBER =
      Pattern.compile("(?<![\\p{L}\\d.,/:])\\d+(?:[.,]\\d+)?(?![\\d:/])");

  /** What a bare figure may be written in, in coherent units: mm, in, ft, g, oz and so on. */
  private static final double[] UNITS = {1, 0.001, 0.01, 0.0254, 0.3048, 0.028349523125, 1e-4};

  private final Log log;
  private final Sight sight;
  private final double[] sizes;
  private final List<Row> withheld = new ArrayList<>();

  /** Figures that follow each other in a withheld table, in coherent units. */
  private record Row(String table, Label label, double[] values) {}

  /**
   * A figure that readers see.
   *
   * @param step of its last digit
   * @param units what it may be written in
   */
  private record Figure(double value, double step, double[] units, @Nullable Spot spot) {}

  /** Where a figure stands in a text. */
  private record Spot(SeenText text, int start, int end) {}

  TableWatch(Log log, Sight sight) {
    this.log = log;
    this.sight = sight;
    Marked<BigDecimal> scale = log.head().scale();
    double n = scale == null ? 1 : scale.value().doubleValue();
    this.sizes = new double[] {1, n, 1 / n};
    for (Table table : log.tables()) {
      runs(table, false)
          .forEach(
              run -> {
                double[] values = run.stream().mapToDouble(c -> c.quantity.coherent()).toArray();
                double[] back = new double[values.length];
                Arrays.setAll(back, i -> values[values.length - 1 - i]);
                Label label = run.stream().map(Cell::label).reduce(Label.NONE, Label::join);
                withheld.add(new Row(table.name(), label, values));
                withheld.add(new Row(table.name(), label, back));
              });
    }
  }

  private record Cell(Quantity quantity, Label label) {}

  /** Every column and every row of a table, as far as it is seen, or as far as it is not. */
  private List<List<Cell>> runs(Table table, boolean seen) {
    List<List<Cell>> runs = new ArrayList<>();
    for (int column = 0; column < table.columns().size(); column++) {
      List<Cell> run = new ArrayList<>();
      for (Table.Row row : table.rows()) {
        add(table, row, column, seen, run);
      }
      runs.add(run);
    }
    for (Table.Row row : table.rows()) {
      List<Cell> run = new ArrayList<>();
      for (int column = 0; column < table.columns().size(); column++) {
        add(table, row, column, seen, run);
      }
      runs.add(run);
    }
    runs.removeIf(run -> run.size() < RUN);
    return runs;
  }

  private void add(Table table, Table.Row row, int column, boolean seen, List<Cell> run) {
    Quantity quantity = row.cells().get(column).quantity();
    Label label = table.label().join(row.label()).join(table.columns().get(column).label());
    if (quantity != null && sight.allows(label) == seen) {
      run.add(new Cell(quantity, label));
    }
  }

  /** Hits in texts, each with its text; one for each table in each passage. */
  void findIn(List<SeenText> texts, BiConsumer<SeenText, Hit> found) {
    if (withheld.isEmpty()) {
      return;
    }
    Set<String> told = new HashSet<>();
    for (List<Figure> figures : sequences(texts)) {
      find(
          figures,
          (row, run) -> {
            Spot first = spot(run.get(0));
            Spot last = spot(run.get(RUN - 1));
            int end = last.text.equals(first.text) ? last.end : first.end;
            if (told.add(first.text.passage().place() + " " + row.table)) {
              Sentence secret = Sentence.of("the table {0}", row.table);
              found.accept(
                  first.text, new Hit(Question.Kind.TABLE, first.start, end, secret, row.label));
            }
          });
    }
  }

  private static Spot spot(Figure figure) {
    return java.util.Objects.requireNonNull(figure.spot);
  }

  /** A question for each open table that holds a run of a withheld one. */
  List<Question> findInTables() {
    List<Question> questions = new ArrayList<>();
    for (Table table : withheld.isEmpty() ? List.<Table>of() : log.tables()) {
      Map<String, Label> held = new LinkedHashMap<>();
      for (List<Cell> run : runs(table, true)) {
        List<Figure> figures = run.stream().map(c -> figure(c.quantity)).toList();
        find(figures, (row, copied) -> held.merge(row.table, row.label, Label::join));
      }
      held.forEach(
          (name, label) -> {
            Sentence found = Sentence.of("the table {0}", table.name());
            String all =
                table.rows().stream()
                    .flatMap(r -> r.cells().stream())
                    .map(Table.Cell::text)
                    .collect(Collectors.joining(","));
            questions.add(
                Question.of(
                    Question.Kind.TABLE,
                    log,
                    table.place(),
                    found,
                    all,
                    Sentence.of("the table {0}", name),
                    label));
          });
    }
    return questions;
  }

  private static Figure figure(Quantity quantity) {
    boolean bare = quantity.unit().equals(Unit.ONE);
    double one = bare ? 1 : Quantity.of(1, quantity.unit()).coherent();
    return new Figure(
        quantity.value().doubleValue(),
        Math.pow(10, -Math.max(0, quantity.value().scale())),
        bare ? UNITS : new double[] {one},
        null);
  }

  /** The figures of each note in their order, and those of each column of a table in a note. */
  private static List<List<Figure>> sequences(List<SeenText> texts) {
    List<List<Figure>> sequences = new ArrayList<>();
    Map<String, List<Figure>> columns = new LinkedHashMap<>();
    Map<String, List<Figure>> notes = new LinkedHashMap<>();
    for (SeenText text : texts) {
      notes
          .computeIfAbsent(text.passage().what().toString(), w -> new ArrayList<>())
          .addAll(figures(text, 0, text.text().length()));
      String[] cells = text.text().split("\\|", -1);
      int at = 0;
      for (int i = 0; cells.length > 1 && i < cells.length; i++) {
        List<Figure> cell = figures(text, at, at + cells[i].length());
        if (!cell.isEmpty()) {
          String column = text.passage().place() + " " + cells.length + " " + i;
          columns.computeIfAbsent(column, c -> new ArrayList<>()).add(cell.get(0));
        }
        at += cells[i].length() + 1;
      }
    }
    sequences.addAll(notes.values());
    sequences.addAll(columns.values());
    return sequences;
  }

  private static List<Figure> figures(SeenText text, int from, int to) {
    List<Figure> figures = new ArrayList<>();
    Matcher m = NUMBER.matcher(text.text()).region(from, to);
    while (m.find()) {
      BigDecimal value = new BigDecimal(m.group().replace(',', '.'));
      figures.add(
          new Figure(
              value.doubleValue(),
              Math.pow(10, -value.scale()),
              UNITS,
              new Spot(text, m.start(), m.end())));
    }
    return figures;
  }

  private void find(List<Figure> figures, BiConsumer<Row, List<Figure>> found) {
    for (int stride = 1; stride <= MOST_STRIDE; stride++) {
      for (int from = 0; from + (RUN - 1) * stride < figures.size(); from++) {
        List<Figure> run = new ArrayList<>(RUN);
        for (int i = 0; i < RUN; i++) {
          run.add(figures.get(from + i * stride));
        }
        boolean fine = isTelling(run, THREE_DIGITS);
        if (fine || stride == 1 && isTelling(run, TWO_DIGITS)) {
          for (Row row : withheld) {
            if (fine ? isFinelyIn(run, row.values) : isIn(run, row.values, 1, 1)) {
              found.accept(row, run);
            }
          }
        }
      }
    }
  }

  private boolean isFinelyIn(List<Figure> run, double[] row) {
    for (double whole : WHOLES) {
      for (int stride = 1; stride <= MOST_STRIDE; stride++) {
        if (isIn(run, row, stride, whole)) {
          return true;
        }
      }
    }
    return false;
  }

  /** Whether a run could not as well be a count or a row of stations. */
  private static boolean isTelling(List<Figure> run, int digits) {
    long telling = run.stream().filter(f -> f.value / f.step >= digits).count();
    long distinct = run.stream().mapToDouble(Figure::value).distinct().count();
    double step = run.get(1).value - run.get(0).value;
    boolean even = true;
    for (int i = 2; i < RUN; i++) {
      even &= Math.abs(run.get(i).value - run.get(i - 1).value - step) <= run.get(i).step;
    }
    return telling >= TELLING && distinct >= TELLING && !even;
  }

  private boolean isIn(List<Figure> run, double[] row, int stride, double whole) {
    for (double unit : run.get(0).units) {
      for (double size : sizes) {
        for (int at = 0; at + (RUN - 1) * stride < row.length; at++) {
          int same = 0;
          while (same < RUN
              && isSame(run.get(same), unit * size / whole, row[at + same * stride])) {
            same++;
          }
          if (same == RUN) {
            return true;
          }
        }
      }
    }
    return false;
  }

  private static boolean isSame(Figure figure, double unit, double value) {
    return Math.abs(figure.value * unit - value) <= figure.step * unit / 2 * (1 + SAME);
  }
}
