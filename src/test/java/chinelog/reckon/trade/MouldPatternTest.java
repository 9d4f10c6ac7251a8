package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import chinelog.drawn.LineUse;
import chinelog.drawn.Spot;
import chinelog.drawn.Stroke;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Moulds as drawn, in mm, against closed forms and against the demo hull's own surface. */
class MouldPatternTest {

  private static Given demo() {
    return Given.the("moulds")
        .table("offsets", Given.resource("offsets.csv"))
        .quantity("thickness", "2 mm")
        .quantity("siding", "2.5 mm");
  }

  private static Given moulds(String csv) {
    return Given.the("moulds").table("offsets", csv).quantity("thickness", "2 mm");
  }

  /** Three like stations of a hull whose half-breadths follow a curve. */
  private static Given prism(DoubleUnaryOperator half, String more, String cells) {
    StringBuilder csv = new StringBuilder("station,x [mm],keel [mm]" + more);
    StringBuilder row = new StringBuilder(cells);
    for (double z : new double[] {0, 0.5, 2, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50}) {
      csv.append(",WL ").append(z).append(" [mm]");
      row.append(String.format(Locale.ROOT, ",%.9f", half.applyAsDouble(z)));
    }
    for (int x = 0; x <= 200; x += 100) {
      csv.append('\n').append(x).append(',').append(x).append(",0").append(row);
    }
    return moulds(csv.toString());
  }

  private static Part part(List<Part> parts, String name) {
    return parts.stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow();
  }

  /** The points of the outline, which must be the only line to be cut, and closed. */
  private static List<Spot> outline(Part part) {
    List<Stroke> cut = part.strokes().stream().filter(s -> s.line() == LineUse.CUT).toList();
    assertThat(cut).hasSize(1);
    assertThat(cut.get(0).closed()).isTrue();
    return cut.get(0).points();
  }

  /** Its points between steps of a quarter of a millimetre, so that the stretches count too. */
  private static List<Spot> along(List<Spot> outline) {
    List<Spot> dense = new ArrayList<>();
    for (int i = 0; i < outline.size(); i++) {
      Spot a = outline.get(i);
      Spot b = outline.get((i + 1) % outline.size());
      int n = (int) Math.ceil(Math.hypot(b.x() - a.x(), b.y() - a.y()) / 0.25);
      for (int k = 0; k < n; k++) {
        double t = (double) k / n;
        dense.add(new Spot(a.x() + t * (b.x() - a.x()), a.y() + t * (b.y() - a.y())));
      }
    }
    return dense;
  }

  private static double distance(Spot p, List<Spot> line) {
    double least = Double.MAX_VALUE;
    for (int i = 1; i < line.size(); i++) {
      Spot a = line.get(i - 1);
      double dx = line.get(i).x() - a.x();
      double dy = line.get(i).y() - a.y();
      double length = dx * dx + dy * dy;
      double along = length == 0 ? 0 : ((p.x() - a.x()) * dx + (p.y() - a.y()) * dy) / length;
      double t = Math.max(0, Math.min(1, along));
      least = Math.min(least, Math.hypot(a.x() + t * dx - p.x(), a.y() + t * dy - p.y()));
    }
    return least;
  }

  @Test // closed form: the parallel curve of a circle is a circle
  void aCylindersMouldIsACircleLessThePlankingAllRound() throws Exception {
    Part mould = part(prism(z -> Math.sqrt(2500 - (50 - z) * (50 - z)), "", "").parts(), "100");
    for (Spot p : along(outline(mould))) {
      if (p.y() < 49.9 && p.x() != 0) {
        assertThat(Math.hypot(p.x(), 50 - p.y())).isCloseTo(48, within(0.05));
      }
    }
  }

  @Test // closed form: parallel straight sides, by the angle of the V
  void aVeesMouldIsAVeeThatBeginsHigher() throws Exception {
    Part mould = part(prism(z -> z / 2, "", "").parts(), "100");
    double rise = 2 * Math.sqrt(5) / 1;
    List<Spot> outline = outline(mould);
    assertThat(outline).hasSize(3);
    assertThat(outline.get(0).x()).isCloseTo(0, within(1e-6));
    assertThat(outline.get(0).y()).isCloseTo(rise, within(0.01));
    assertThat(outline.get(1).x()).isCloseTo((50 - rise) / 2, within(0.01));
  }

  @Test // closed form: the bottom loses the planking too, and the corner stays a corner
  void aFlatBottomedMouldLosesThePlankingBelowToo() throws Exception {
    Part mould = part(prism(z -> 20, ",keel half-breadth [mm]", ",20").parts(), "100");
    List<Spot> right = outline(mould).stream().filter(p -> p.x() > 1e-9).toList();
    assertThat(right).hasSize(2);
    assertThat(right.get(0).x()).isCloseTo(18, within(0.01));
    assertThat(right.get(0).y()).isCloseTo(2, within(0.01));
    assertThat(right.get(1).y()).isCloseTo(50, within(0.01));
  }

  @Test // closed form: in the plane of a station a cone's planking is thicker by 1/cos of its angle
  void aConesMouldLosesMoreThanThePlanking() throws Exception {
    StringBuilder csv = new StringBuilder("station,x [mm],keel [mm]");
    for (int k = 0; k <= 10; k++) {
      csv.append(",WL ").append(5 * k).append(" [mm]");
    }
    // Radius 30, 40 and 50 mm at 100 mm apart, all about a middle line 50 mm up.
    for (int i = 0; i < 3; i++) {
      double r = 30 + 10 * i;
      csv.append('\n').append(i).append(',').append(100 * i).append(',').append(50 - r);
      for (int k = 0; k <= 10; k++) {
        double up = 50 - 5 * k;
        csv.append(',');
        if (up <= r) {
          csv.append(String.format(Locale.ROOT, "%.9f", Math.sqrt(r * r - up * up)));
        }
      }
    }
    double inner = 40 - 2 * Math.hypot(1, 0.1);
    for (Spot p : along(outline(part(moulds(csv.toString()).parts(), "1")))) {
      if (p.y() < 49.9 && p.y() > 25 && p.x() != 0) {
        assertThat(Math.hypot(p.x(), 50 - p.y())).isCloseTo(inner, within(0.05));
      }
    }
  }

  @Test // closed form: a chine stays one, between straight bottom and straight side
  void aChineThatTheTableMarksStaysACorner() throws Exception {
    String csv = "station,x [mm],keel [mm],chine [mm],chine half-breadth [mm],WL 50 [mm]";
    for (int x = 0; x <= 200; x += 100) {
      csv += "\n" + x + "," + x + ",0,10,40,40";
    }
    List<Spot> right =
        outline(part(moulds(csv).parts(), "100")).stream().filter(p -> p.x() > 1e-9).toList();
    double lift = 2 * Math.sqrt(17) / 4;
    assertThat(right).hasSize(2);
    assertThat(right.get(0).x()).isCloseTo(38, within(0.01));
    assertThat(right.get(0).y()).isCloseTo(38 / 4.0 + lift, within(0.01));
  }

  /** Points of the demo hull's surface, 2 mm inwards along its normal and cut at each station. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void theDemosMouldsLieOnTheInsideOfItsHullBetweenTheWaterlinesToo(int station) throws Exception {
    List<Spot> surface = new ArrayList<>();
    for (String line : Given.resource("inside.csv").split("\n")) {
      String[] cells = line.split(",");
      if (cells[0].equals(String.valueOf(station))) {
        surface.add(new Spot(Double.parseDouble(cells[1]), Double.parseDouble(cells[2])));
      }
    }
    Part mould = part(demo().parts(), String.valueOf(station));
    double top = outline(mould).stream().mapToDouble(Spot::y).max().orElseThrow();
    double worst = 0;
    Spot where = surface.get(0);
    for (Spot p : along(outline(mould))) {
      // Where planks are cut off at sheer and keel the surface has no inside to compare with.
      if (p.x() > surface.get(0).x() && p.y() > surface.get(0).y() && p.y() < top - 3) {
        if (distance(p, surface) > worst) {
          worst = distance(p, surface);
          where = p;
        }
      }
    }
    assertThat(worst).as("%s", where).isLessThan(0.2);
  }

  @Test
  void theOutlineIsWhereTheReckonedHalfBreadthsSay() throws Exception {
    List<Part> parts = demo().parts();
    for (Yield yield : demo().yields()) {
      String[] name = yield.name().split("_", 3);
      double height = Double.parseDouble(name[2].replace('_', '.'));
      double half = yield.value().doubleIn(chinelog.quantity.Unit.METRE) * 1000;
      List<Spot> outline = outline(part(parts, name[1]));
      List<Spot> closed = new ArrayList<>(outline);
      closed.add(outline.get(0));
      assertThat(distance(new Spot(half, height), closed)).isLessThan(0.005);
      assertThat(distance(new Spot(-half, height), closed)).isLessThan(0.005);
    }
  }

  @Test
  void noCurveWigglesBetweenItsPoints() throws Exception {
    for (Part part : demo().word("mould", "half").parts()) {
      if (part.name().equals("building_board")) {
        continue;
      }
      List<Spot> outline = outline(part);
      for (int i = 2; i < outline.size() - 1; i++) {
        assertThat(outline.get(i).y()).isGreaterThanOrEqualTo(outline.get(i - 1).y() - 1e-6);
        assertThat(outline.get(i).x()).isGreaterThanOrEqualTo(outline.get(i - 1).x() - 0.25);
      }
    }
  }

  @Test
  void bevelsAreTheHullsSlopeToTheMould() throws Exception {
    // Plumb sides that open by one in four: atan(1/4) is 14°.
    String csv = "station,x [mm],keel [mm],WL 20 [mm],WL 50 [mm]";
    for (int i = 0; i < 3; i++) {
      int half = 20 + 25 * i;
      csv += "\n" + i + "," + 100 * i + ",0," + half + "," + half;
    }
    Part mould =
        part(
            moulds(
                    csv.replace("WL 20", "WL 0 [mm],WL 20")
                        .replaceAll("(?m)^(\\d,\\d+,0,)(\\d+)", "$1$2,$2"))
                .parts(),
            "1");
    assertThat(mould.letters()).anyMatch(l -> l.text().equals(chinelog.wording.Phrase.own("14°")));
  }

  @Test
  void mouldsStandOnABoardAtOneHeightAndFitOverTheKeel() throws Exception {
    Given given =
        demo()
            .quantity("board", "160 mm")
            .quantity("notch_width", "4 mm")
            .quantity("notch_depth", "6 mm");
    for (Part part : given.parts()) {
      if (!part.name().equals("building_board")) {
        List<Spot> outline = outline(part);
        assertThat(outline.stream().mapToDouble(Spot::y).max().orElseThrow())
            .isCloseTo(160, within(1e-6));
        assertThat(outline.get(0).x()).isCloseTo(0, within(1e-9));
        if (part.name().equals("11") || part.name().equals("12")) {
          // Narrower there than the keel, on which it ends.
          assertThat(outline.get(1).x()).isBetween(0.2, 2.0);
          continue;
        }
        assertThat(outline.get(1).x()).isCloseTo(2, within(1e-6));
        assertThat(outline.get(2).x()).isCloseTo(2, within(1e-6));
        assertThat(outline.get(0).y()).isGreaterThan(outline.get(2).y());
      }
    }
  }

  @Test
  void whatCannotBeCutIsSaidWithItsRemedy() {
    assertThatThrownBy(() -> demo().quantity("board", "100 mm").parts())
        .isInstanceOfSatisfying(
            TradeException.class,
            e -> {
              assertThat(e.input()).isEqualTo("board");
              assertThat(e.what()).contains("station 6");
              assertThat(e.remedy()).contains("142.1 mm");
            });
    assertThatThrownBy(
            () -> demo().quantity("notch_width", "40 mm").quantity("notch_depth", "5 mm").parts())
        .isInstanceOfSatisfying(
            TradeException.class,
            e -> {
              assertThat(e.input()).isEqualTo("notch_width");
              assertThat(e.what()).contains("wider than the mould of station");
              assertThat(e.remedy()).startsWith("Give a narrower");
            });
    assertThatThrownBy(() -> demo().quantity("notch_width", "4 mm").parts())
        .isInstanceOf(TradeException.class)
        .hasMessageContaining("one measure is missing");
    assertThatThrownBy(() -> demo().quantity("thickness", "30 mm").parts())
        .isInstanceOfSatisfying(
            TradeException.class, e -> assertThat(e.input()).isEqualTo("thickness"));
  }
}
