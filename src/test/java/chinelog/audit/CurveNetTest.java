package chinelog.audit;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.label.Label;
import chinelog.log.records.Table;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Lines that are no withheld curve are none to the audit, however fair they are. */
class CurveNetTest {

  private static final int STATIONS = 9;

  /** Half-breadths of a hull's waterline, fuller or finer at either end. */
  private static double[] waterline(Random random) {
    double length = 400 + random.nextInt(600);
    double half = length / (6 + 6 * random.nextDouble());
    double fullest = 0.35 + 0.3 * random.nextDouble();
    double aft = 1.5 + 2 * random.nextDouble();
    double fore = 1.5 + 2 * random.nextDouble();
    double transom = random.nextDouble();
    double[] points = new double[2 * STATIONS];
    for (int i = 0; i < STATIONS; i++) {
      double at = i / (STATIONS - 1.0);
      double off = at < fullest ? (fullest - at) / fullest : (at - fullest) / (1 - fullest);
      double share = at < fullest ? 1 - transom * Math.pow(off, aft) : 1 - Math.pow(off, fore);
      points[2 * i] = length * at;
      points[2 * i + 1] = half * share;
    }
    return points;
  }

  private static Table table(double[] points) throws QuantityException {
    Place here = Place.of("tables/lines.csv", 1, 1);
    List<Table.Row> rows = new ArrayList<>();
    for (int i = 0; i < STATIONS; i++) {
      List<Table.Cell> cells = new ArrayList<>();
      for (int k = 0; k < 2; k++) {
        Quantity mm =
            Quantity.of(BigDecimal.valueOf(Math.round(points[2 * i + k] * 10), 1), Unit.MILLIMETRE);
        cells.add(new Table.Cell(mm.toString(), mm, here));
      }
      rows.add(new Table.Row(cells, Label.NONE, here));
    }
    List<Table.Column> columns =
        List.of("x", "half").stream()
            .map(name -> new Table.Column(name, Unit.MILLIMETRE, Label.NONE, here))
            .toList();
    return new Table("lines", columns, rows, Label.NONE, here);
  }

  /** To a tenth of a unit of a drawing 400 across. */
  private static List<double[]> drawn(double[] points) {
    double scale = 400 / points[2 * STATIONS - 2];
    return IntStream.range(0, STATIONS)
        .mapToObj(
            i ->
                new double[] {
                  Math.round(points[2 * i] * scale * 10) / 10.0,
                  Math.round(points[2 * i + 1] * scale * 10) / 10.0
                })
        .toList();
  }

  @Test
  void aWaterlineIsFoundAndHardlyAnotherHulls() throws QuantityException {
    int mistaken = 0;
    int pairs = 0;
    for (int hull = 0; hull < 60; hull++) {
      double[] own = waterline(new Random(hull));
      CurveNet net = new CurveNet();
      net.add(table(own), label -> true);
      assertThat(net.find(List.of(drawn(own)))).hasSize(1);
      for (int other = 1000; other < 1050; other++) {
        pairs++;
        mistaken += net.find(List.of(drawn(waterline(new Random(other))))).size();
      }
    }
    assertThat(mistaken).as("of %d", pairs).isLessThanOrEqualTo(pairs / 1000);
  }

  @Test
  void whatIsStraightOrScribbledIsNoCurve() throws QuantityException {
    double[] straight = new double[2 * STATIONS];
    for (int i = 0; i < STATIONS; i++) {
      straight[2 * i] = 10 * i;
      straight[2 * i + 1] = 7 * i;
    }
    CurveNet net = new CurveNet();
    net.add(table(straight), label -> true);
    assertThat(net.size()).isZero();
    net.add(table(waterline(new Random(1))), label -> true);
    List<double[]> scribble = new ArrayList<>();
    for (int i = 0; i < 400; i++) {
      scribble.add(new double[] {i, i % 2 == 0 ? 0 : 60});
    }
    assertThat(net.find(List.of(scribble))).isEmpty();
  }

  @Test
  void whatReadersSeeIsNotLookedFor() throws QuantityException {
    CurveNet net = new CurveNet();
    net.add(table(waterline(new Random(1))), label -> false);
    assertThat(net.size()).isZero();
  }
}
