package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import chinelog.drawn.LineUse;
import chinelog.drawn.Spot;
import chinelog.drawn.Stroke;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Parts other than moulds as drawn, in mm, against what is reckoned of the same. */
class DrawnPartsTest {

  private static Part part(List<Part> parts, String name) {
    return parts.stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow();
  }

  private static List<Spot> outline(Part part) {
    List<Stroke> cut = part.strokes().stream().filter(s -> s.line() == LineUse.CUT).toList();
    assertThat(cut).hasSize(1);
    return cut.get(0).points();
  }

  /** By the shoelace rule. */
  private static double area(List<Spot> outline) {
    double sum = 0;
    for (int i = 0; i < outline.size(); i++) {
      Spot a = outline.get(i);
      Spot b = outline.get((i + 1) % outline.size());
      sum += a.x() * b.y() - b.x() * a.y();
    }
    return Math.abs(sum) / 2;
  }

  private static Given sail(String shape) {
    return Given.the("sail")
        .word("shape", shape)
        .quantity("luff", "600 mm")
        .quantity("foot", "300 mm")
        .quantity("leech", "640 mm");
  }

  @Test
  void aSailEnclosesTheAreaThatIsReckonedOfIt() throws Exception {
    for (Given sail :
        List.of(
            sail("triangle"),
            sail("triangle").quantity("roach_half", "30 mm"),
            sail("triangle").quantity("roach_lower", "25 mm").quantity("roach_upper", "18 mm"),
            sail("quadrilateral")
                .quantity("head", "250 mm")
                .quantity("diagonal", "610 mm")
                .quantity("roach_half", "20 mm"))) {
      double drawn = area(outline(sail.parts().get(0)));
      assertThat(drawn / 100).isCloseTo(sail.in("cm²", "area"), within(0.5));
    }
    Given bowed = sail("triangle").quantity("luff_round", "6 mm");
    assertThat(area(outline(bowed.parts().get(0))) / 100)
        .isCloseTo(bowed.in("cm²", "area") + 2.0 / 3 * 60 * 0.6, within(0.5));
  }

  @Test
  void seamsLieSquareToTheLeechAPanelApart() throws Exception {
    Part sail = sail("triangle").quantity("panel", "100 mm").parts().get(0);
    List<Stroke> seams = sail.strokes().stream().filter(s -> s.line() == LineUse.SCORE).toList();
    assertThat(seams).hasSize(6);
    List<Spot> outline = outline(sail);
    Spot head = outline.get(outline.size() - 1);
    Spot clew = outline.get(1);
    for (Stroke seam : seams) {
      double dx = seam.points().get(1).x() - seam.points().get(0).x();
      double dy = seam.points().get(1).y() - seam.points().get(0).y();
      double along = dx * (head.x() - clew.x()) + dy * (head.y() - clew.y());
      assertThat(along / Math.hypot(dx, dy) / 640).isCloseTo(0, within(1e-9));
    }
  }

  private static Given planking() {
    return Given.the("planking")
        .table("offsets", Given.resource("offsets.csv"))
        .quantity("siding", "2.5 mm")
        .quantity("strip_width", "6 mm");
  }

  @Test
  void aGaugeIsAsLongAsItsGirthAndDividedIntoItsStrips() throws Exception {
    List<Part> parts = planking().parts();
    for (int station = 0; station <= 11; station++) {
      Part gauge = part(parts, "gauge_" + station);
      double girth = outline(gauge).stream().mapToDouble(Spot::x).max().orElseThrow();
      double width = planking().in("mm", "width_" + station);
      double strips = planking().number("reach_" + station);
      List<Double> marks =
          gauge.strokes().stream()
              .filter(s -> s.line() == LineUse.SCORE)
              .map(s -> s.points().get(0).x())
              .toList();
      assertThat(marks).hasSize((int) strips - 1);
      assertThat(marks.get(0)).isCloseTo(width, within(0.001));
      assertThat(marks.get(marks.size() - 1)).isCloseTo(girth - width, within(0.001));
    }
  }

  @Test
  void theShutterIsAsWideAsItsNeighboursAtEveryStation() throws Exception {
    List<Spot> shutter = outline(part(planking().parts(), "shutter"));
    double first = shutter.get(0).y();
    assertThat(-2 * first).isCloseTo(planking().in("mm", "width_0"), within(0.001));
    double widest = shutter.stream().mapToDouble(Spot::y).max().orElseThrow();
    assertThat(2 * widest).isBetween(5.6, 6.001);
  }

  @Test
  void aSparHasItsDiametersAtItsStations() throws Exception {
    Given spar =
        Given.the("spar")
            .quantity("length", "800 mm")
            .quantity("diameter", "12 mm")
            .quantity("end", "6 mm");
    // Swelled: D − (D − d) u².
    for (Spot p : outline(spar.parts().get(0))) {
      double u = p.x() / 800;
      assertThat(Math.abs(p.y())).isCloseTo(6 - 3 * u * u, within(0.02));
    }
    List<Double> diameters =
        spar.parts().get(0).strokes().stream()
            .filter(s -> s.line() == LineUse.SCORE)
            .map(s -> s.points().get(1).y() - s.points().get(0).y())
            .toList();
    for (int i = 0; i <= 4; i++) {
      assertThat(diameters.get(i)).isCloseTo(spar.in("mm", "diameter_" + i), within(1e-6));
    }
  }

  @Test
  void aSleeveWrapsRoundItsTaper() throws Exception {
    Given spar =
        Given.the("spar")
            .quantity("length", "800 mm")
            .quantity("diameter", "12 mm")
            .quantity("end", "6 mm")
            .word("taper", "straight")
            .quantity("sleeve_at", "200 mm")
            .quantity("sleeve_length", "100 mm")
            .quantity("track_width", "4 mm")
            .quantity("track_to", "780 mm");
    // A frustum of radii 5.25 and 4.875 mm and 100 mm high: its side, and twice π times each
    // radius along its arcs.
    double side = Math.hypot(100, 0.375);
    List<Spot> outline = outline(spar.parts().get(1));
    double thick = 0;
    double thin = 0;
    double apex = 5.25 * side / 0.375;
    for (int i = 0; i < outline.size(); i++) {
      Spot a = outline.get(i);
      Spot b = outline.get((i + 1) % outline.size());
      double far = Math.hypot(apex - a.x(), a.y());
      assertThat(Math.min(Math.abs(far - apex), Math.abs(far - apex + side))).isLessThan(0.02);
      double step = Math.hypot(b.x() - a.x(), b.y() - a.y());
      if (step < side - 1) {
        thick += Math.abs(far - apex) < 1 ? step : 0;
        thin += Math.abs(far - apex) < 1 ? 0 : step;
      }
    }
    assertThat(thick).isCloseTo(2 * Math.PI * 5.25, within(0.05));
    assertThat(thin).isCloseTo(2 * Math.PI * 4.875, within(0.05));
    assertThat(spar.parts().get(0).strokes())
        .filteredOn(s -> s.line() == LineUse.SCORE && Math.abs(s.points().get(0).y()) == 2)
        .hasSizeGreaterThanOrEqualTo(2)
        .allMatch(s -> s.points().get(1).x() <= 780 + 1e-9);
  }

  private static Given onSheets(String width, String length) {
    return Given.the("moulds")
        .table("offsets", Given.resource("offsets.csv"))
        .quantity("thickness", "2 mm")
        .quantity("siding", "2.5 mm")
        .quantity("board", "160 mm")
        .quantity("sheet_width", width)
        .quantity("sheet_length", length);
  }

  @Test
  void sheetsAreCountedAndNoPartIsLargerThanOne() throws Exception {
    // A sheet for each of the widest, and others beside or above each other.
    assertThat(onSheets("600 mm", "300 mm").number("sheets")).isBetween(3.0, 5.0);
    assertThat(onSheets("2 m", "1.5 m").number("sheets")).isEqualTo(1);
    assertThat(onSheets("600 mm", "300 mm").quantity("sheets", "2").number("sheets_short"))
        .isEqualTo(onSheets("600 mm", "300 mm").number("sheets") - 2);
    assertThatThrownBy(() -> onSheets("150 mm", "300 mm").yields())
        .isInstanceOfSatisfying(
            TradeException.class,
            e -> {
              assertThat(e.input()).isEqualTo("sheet_width");
              assertThat(e.what()).contains("larger than a sheet");
              assertThat(e.remedy()).contains("mould: half");
            });
  }

  @Test
  void theLinesPlanFitsASheetAndIsNotForCutting() throws Exception {
    Part lines =
        Given.the("hull-form")
            .table("offsets", Given.resource("offsets.csv"))
            .quantity("draught", "52 mm")
            .parts()
            .get(0);
    assertThat(lines.strokes()).noneMatch(s -> s.line() == LineUse.CUT);
    assertThat(lines.strokes())
        .flatExtracting(Stroke::points)
        .allMatch(p -> p.x() > -5 && p.x() < 180 && p.y() < 10 && p.y() > -260);
  }

  /** A hull of one V all along, 20 mm wide for each 20 mm of height on either side. */
  private static Given prism() {
    return Given.the("moulds")
        .table(
            "offsets",
            "station,x [mm],keel [mm],WL 0 [mm],WL 50 [mm]\n0,0,0,0,50\n1,100,0,0,50\n2,200,0,0,50")
        .quantity("thickness", "2 mm");
  }

  @Test // closed form: a prism cut at a slant keeps its breadths and grows by 1/cos in height
  void aLeaningTransomIsHigherAndNoWider() throws Exception {
    double foot = 2 * Math.sqrt(2);
    List<Spot> transom =
        outline(part(prism().quantity("transom_rake", "30 deg").parts(), "transom"));
    assertThat(transom.stream().mapToDouble(Spot::y).max().orElseThrow())
        .isCloseTo((50 - foot) / Math.cos(Math.toRadians(30)), within(0.01));
    assertThat(transom.stream().mapToDouble(Spot::x).max().orElseThrow())
        .isCloseTo(50 - foot, within(0.01));
  }

  @Test // closed form: the arc over a chord with a given rise
  void aCamberedDeckIsAsWideAsItsArc() throws Exception {
    double half = 50 - 2 * Math.sqrt(2);
    List<Spot> flat = outline(part(prism().quantity("camber", "0 mm").parts(), "deck"));
    assertThat(area(flat)).isCloseTo(200 * 2 * half, within(1.0));
    List<Spot> deck = outline(part(prism().quantity("camber", "10 mm").parts(), "deck"));
    double angle = 2 * Math.atan(10 / half);
    assertThat(area(deck)).isCloseTo(200 * 2 * half * angle / Math.sin(angle), within(1.0));
    assertThatThrownBy(() -> prism().quantity("camber", "90 mm").parts())
        .isInstanceOf(TradeException.class)
        .hasMessageContaining("half the beam");
  }

  @Test // the section's area is 0.6851 of chord times thickness (NACA four-digit family)
  void aFinHasItsPlanAndItsSections() throws Exception {
    List<Part> fin =
        Given.the("foil")
            .quantity("root", "120 mm")
            .quantity("tip", "80 mm")
            .quantity("span", "200 mm")
            .quantity("rake", "30 mm")
            .quantity("thickness", "12 %")
            .parts();
    assertThat(area(outline(part(fin, "side")))).isCloseTo(20_000, within(0.01));
    assertThat(area(outline(part(fin, "root")))).isCloseTo(0.6851 * 0.12 * 120 * 120, within(1.5));
    assertThat(area(outline(part(fin, "tip")))).isCloseTo(0.6851 * 0.12 * 80 * 80, within(1.0));
  }

  @Test
  void aBulbIsAsLongAndAsThickAsReckoned() throws Exception {
    Given bulb =
        Given.the("bulb")
            .quantity("mass", "2 kg")
            .quantity("fineness", "6")
            .quantity("density", "11 g/cm³");
    List<Spot> outline = outline(bulb.parts().get(0));
    assertThat(outline.stream().mapToDouble(Spot::x).max().orElseThrow())
        .isCloseTo(bulb.in("mm", "length"), within(0.01));
    assertThat(2 * outline.stream().mapToDouble(Spot::y).max().orElseThrow())
        .isCloseTo(bulb.in("mm", "diameter"), within(0.05));
  }
}
