package chinelog.withhold;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Marked;
import chinelog.log.records.Request;
import chinelog.log.records.Table;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * A hull that some random builds have, with reckonings that draw it: its offsets, what is aboard,
 * and the strips counted may each be under an agreement. Twins have the same, but for what the
 * readers may not see.
 */
final class RandomHull {

  private static final int STATIONS = 5;
  private static final int[] HEIGHTS = {20, 40, 60};
  private static final Place HERE = Place.of("tables/offsets.csv", 1, 1);

  private final Random open;
  private final Random secret;
  private final Predicate<Label> hides;
  private final Coverage coverage;
  private final boolean isThere;
  private int strips;

  /**
   * @param hides whether a label keeps something from the readers
   */
  RandomHull(long seed, long secretSeed, Predicate<Label> hides, Coverage coverage) {
    // Numbers of its own, so that the rest of a build is as it is without a hull.
    this.open = new Random(31 * seed + 7);
    this.secret = new Random(31 * secretSeed + 7);
    this.hides = hides;
    this.coverage = coverage;
    this.isThere = open.nextInt(9) == 0;
  }

  private Label label(int oneIn) {
    if (open.nextInt(oneIn) != 0) {
      return Label.NONE;
    }
    return switch (open.nextInt(4)) {
      case 0 -> Label.of("client");
      case 1 -> Label.of("client", "lines");
      case 2 -> Label.of("embargo");
      default -> Label.of("lines");
    };
  }

  /** A small number that twins share unless its label hides it. */
  private int differing(Label label, int most) {
    int shared = open.nextInt(most);
    int other = secret.nextInt(most);
    if (!hides.test(label)) {
      return shared;
    }
    coverage.changed("hull");
    return other;
  }

  List<Table> tables() {
    return isThere ? List.of(offsets(), masses()) : List.of();
  }

  private Table offsets() {
    Label whole = label(2);
    List<Table.Column> columns = new ArrayList<>();
    columns.add(new Table.Column("x from aft", Unit.MILLIMETRE, Label.NONE, HERE));
    columns.add(new Table.Column("keel", Unit.MILLIMETRE, Label.NONE, HERE));
    for (int height : HEIGHTS) {
      String name = "WL " + height + " half-breadth";
      columns.add(new Table.Column(name, Unit.MILLIMETRE, label(9), HERE));
    }
    List<Table.Row> rows = new ArrayList<>();
    for (int i = 0; i < STATIONS; i++) {
      List<Table.Cell> cells = new ArrayList<>(List.of(cell(150 * i, Unit.MILLIMETRE)));
      cells.add(cell(0, Unit.MILLIMETRE));
      for (int k = 0; k < HEIGHTS.length; k++) {
        Label label = whole.join(columns.get(k + 2).label());
        int fullness = 10 * (4 - Math.abs(i - 2)) + 12 * k;
        cells.add(cell(fullness + differing(label, 9), Unit.MILLIMETRE));
      }
      rows.add(new Table.Row(cells, Label.NONE, HERE));
    }
    return new Table("offsets", columns, rows, whole, HERE);
  }

  private Table masses() {
    Label whole = label(3);
    List<Table.Column> columns =
        List.of(
            new Table.Column("mass", Unit.GRAM, Label.NONE, HERE),
            new Table.Column("x", Unit.MILLIMETRE, Label.NONE, HERE),
            new Table.Column("z", Unit.MILLIMETRE, Label.NONE, HERE));
    List<Table.Row> rows = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      Label row = label(4);
      int mass = 400 + differing(whole.join(row), 90);
      rows.add(
          new Table.Row(
              List.of(
                  cell(mass, Unit.GRAM),
                  cell(280 + 20 * i, Unit.MILLIMETRE),
                  cell(25, Unit.MILLIMETRE)),
              row,
              HERE));
    }
    return new Table("masses", columns, rows, whole, HERE);
  }

  private static Table.Cell cell(int number, Unit unit) {
    Quantity quantity = Quantity.of(number, unit);
    return new Table.Cell(String.valueOf(number), quantity, HERE);
  }

  List<Request> requests() {
    if (!isThere) {
      return List.of();
    }
    List<Request> requests = new ArrayList<>();
    requests.add(request("form", "hull-form", "draught", "40 mm"));
    requests.add(request("planks", "planking", "strip_width", "6 mm", "laid", "strips.laid"));
    requests.add(request("moulds", "moulds", "thickness", "1 mm"));
    if (open.nextInt(4) == 0) {
      requests.add(request("floats", "afloat", "masses", "masses", "heel_most", "20 deg"));
    }
    return requests;
  }

  private Request request(String prefix, String reckoning, String... inputs) {
    TreeMap<String, Marked<String>> all = new TreeMap<>();
    all.put("offsets", new Marked<>("offsets", Label.NONE, HERE));
    for (int i = 0; i < inputs.length; i += 2) {
      all.put(inputs[i], new Marked<>(inputs[i + 1], Label.NONE, HERE));
    }
    return new Request(prefix, new Marked<>(reckoning, Label.NONE, HERE), all, label(6), HERE);
  }

  /** Strips counted in an entry, more than in the one before. */
  List<Entry.Measurement> counted(Label entry) {
    if (!isThere) {
      return List.of();
    }
    Label own = entry.join(label(5));
    strips += 2;
    Quantity laid = Quantity.of(strips + differing(own, 2), Unit.ONE);
    return List.of(new Entry.Measurement("strips.laid", laid, "", own, HERE));
  }
}
