package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import chinelog.drawn.Ink;
import chinelog.drawn.Spot;
import chinelog.reckon.trade.Sketch.Disc;
import chinelog.reckon.trade.Sketch.Line;
import chinelog.reckon.trade.Sketch.Strip;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Drawings to look at, measured against closed forms. */
class SketchesTest {

  /** 600 × 160 mm, 120 mm deep, drawn 384 units long: 0.64 units to a millimetre. */
  private static Given box() {
    StringBuilder offsets =
        new StringBuilder(
            "x [mm],keel [mm],keel half-breadth [mm],WL 60 half-breadth [mm],WL 120 half-breadth [mm]\n");
    for (int i = 0; i <= 4; i++) {
      offsets.append(i * 150).append(",0,80,80,80\n");
    }
    return Given.the("afloat")
        .table("offsets", offsets.toString())
        .table("masses", "item,mass [g],x [mm],z [mm]\nEngine,3600,300,40\nCells,1200,300,60")
        .quantity("density", "1 g/cm³");
  }

  private static List<Line> lines(Sketch sketch, Ink ink) {
    return sketch.shapes().stream()
        .flatMap(s -> s instanceof Line line && line.ink() == ink ? List.of(line).stream() : null)
        .toList();
  }

  private static List<Disc> discs(Sketch sketch, Ink ink) {
    return sketch.shapes().stream()
        .flatMap(s -> s instanceof Disc disc && disc.ink() == ink ? List.of(disc).stream() : null)
        .toList();
  }

  /** 4800 g over 960 cm²: she draws 50 mm; B lies at 25 mm, G at 45 mm. */
  @Test
  void aBoxLiesOnItsWaterlineWithItsCentresAboveEachOther() throws Exception {
    Sketch balance = box().sketches().get(0);
    double base =
        lines(balance, Ink.HULL).get(0).points().stream().mapToDouble(Spot::y).min().orElseThrow();
    for (Spot p : lines(balance, Ink.WATER).get(0).points()) {
      assertThat(p.y() - base).isCloseTo(50 * 0.64, within(0.01));
    }
    List<Disc> centres = discs(balance, Ink.CENTROID);
    assertThat(centres.get(0).at().x()).isCloseTo(8 + 300 * 0.64, within(0.01));
    assertThat(centres.get(0).at().y() - base).isCloseTo(45 * 0.64, within(0.01));
    assertThat(centres.get(1).at().y() - base).isCloseTo(25 * 0.64, within(0.01));
    List<Disc> masses = discs(balance, Ink.WEIGHT);
    assertThat(masses.get(0).radius()).isCloseTo(2 * masses.get(1).radius() * 0.866, within(0.01));
    assertThat(masses.get(1).at().y() - base).isCloseTo(60 * 0.64, within(0.01));
  }

  /** Upright sides: GZ = (GM + ½ BM tan² φ) sin φ, with GM 22.667 and BM 42.667 mm. */
  @Test
  void theRightingArmsOfABoxRiseAsTheirClosedForm() throws Exception {
    Sketch balance = box().sketches().get(0);
    Line curve = lines(balance, Ink.CURVE).get(0);
    Spot start = curve.points().get(0);
    Spot end = curve.points().get(curve.points().size() - 1);
    double perDegree = (end.x() - start.x()) / 90;
    // On its side the box is one of 120 mm breadth: 15 mm.
    double perMm = (end.y() - start.y()) / 15;
    for (int angle : new int[] {10, 20, 30}) {
      double phi = Math.toRadians(angle);
      double gz = (22.66667 + 42.66667 / 2 * Math.pow(Math.tan(phi), 2)) * Math.sin(phi);
      assertThat(at(curve, start.x() + angle * perDegree) - start.y())
          .isCloseTo(gz * perMm, within(0.6));
    }
  }

  private static double at(Line curve, double x) {
    for (int i = 1; i < curve.points().size(); i++) {
      Spot a = curve.points().get(i - 1);
      Spot b = curve.points().get(i);
      if (x <= b.x()) {
        return a.y() + (x - a.x()) / (b.x() - a.x()) * (b.y() - a.y());
      }
    }
    throw new AssertionError("not so far");
  }

  /** A wedge of half-breadth z x / L: its areas grow straight from nothing. */
  @Test
  void theCurveOfAreasOfAWedgeIsStraight() throws Exception {
    StringBuilder offsets =
        new StringBuilder(
            "station,x [mm],keel [mm],WL 50 half-breadth [mm],WL 100 half-breadth [mm]\n");
    for (int i = 1; i <= 6; i++) {
      offsets.append(i).append(',').append(i * 100).append(",0,").append(i * 5).append(',');
      offsets.append(i * 10).append('\n');
    }
    Sketch lines =
        Given.the("hull-form")
            .table("offsets", offsets.toString())
            .quantity("draught", "80 mm")
            .sketches()
            .get(0);
    List<Spot> curve = lines(lines, Ink.CURVE).get(0).points();
    double base =
        lines(lines, Ink.AREA).get(0).points().stream().mapToDouble(Spot::y).min().orElseThrow();
    Spot last = curve.get(curve.size() - 1);
    for (Spot p : curve) {
      double x = 100 + 500 * (p.x() - 6) / 388;
      assertThat((p.y() - base) / (last.y() - base)).isCloseTo(x / 600, within(0.005));
    }
    assertThat(lines.rows()).hasSize(6);
  }

  /** The keel rises out of the water half way between the last stations and the first ones. */
  @Test
  void theCurveOfAreasComesToNothingWhereTheKeelLeavesTheWater() throws Exception {
    Sketch lines =
        Given.the("hull-form")
            .table(
                "offsets",
                "station,x [mm],keel [mm],WL 100 half-breadth [mm],WL 120 half-breadth [mm]\n"
                    + "1,0,100,0,10\n2,100,60,30,36\n3,200,20,44,50\n4,300,60,30,36\n"
                    + "5,400,100,0,10\n")
            .quantity("draught", "80 mm")
            .sketches()
            .get(0);
    List<Spot> curve = lines(lines, Ink.CURVE).get(0).points();
    double base =
        lines(lines, Ink.AREA).get(0).points().stream().mapToDouble(Spot::y).min().orElseThrow();
    for (Spot end : List.of(curve.get(0), curve.get(curve.size() - 1))) {
      assertThat(end.y()).isCloseTo(base, within(0.05));
      assertThat(Math.abs((end.x() - 200) / 388 * 400)).isCloseTo(150, within(0.5));
    }
  }

  /** Lettering and the curve of arms keep clear of a bulb far below the keel. */
  @Test
  void whatHangsBelowTheKeelHasItsRoom() throws Exception {
    Sketch balance =
        box()
            .table("masses", "item,mass [g],x [mm],z [mm]\nShell,2800,300,60\nBulb,2000,300,-260\n")
            .sketches()
            .get(0);
    double lowest =
        discs(balance, Ink.WEIGHT).stream()
            .mapToDouble(d -> d.at().y() - d.radius())
            .min()
            .orElseThrow();
    assertThat(lines(balance, Ink.CURVE).get(0).points())
        .allSatisfy(p -> assertThat(p.y()).isLessThan(lowest - 20));
    assertThat(balance.shapes())
        .filteredOn(s -> s instanceof Sketch.Note note && note.quiet())
        .isNotEmpty()
        .allSatisfy(s -> assertThat(((Sketch.Note) s).at().y()).isLessThan(lowest - 20));
  }

  @Test
  void theStripsOfAShellShareItsGirth() throws Exception {
    Sketch shell =
        Given.the("planking")
            .table(
                "girths",
                "station,x [mm],girth [mm]\n0,0,60\n1,100,100\n2,200,120\n3,300,90\n4,400,12\n")
            .quantity("strip_width", "10 mm")
            .quantity("least_width", "4 mm")
            .sketches()
            .get(0);
    List<Strip> strips =
        shell.shapes().stream()
            .flatMap(s -> s instanceof Strip strip ? List.of(strip).stream() : null)
            .toList();
    assertThat(strips).extracting(Strip::turn).startsWith(1, 2, 3).hasSize(12);
    double keel = lines(shell, Ink.HULL).get(1).points().get(0).y();
    double perMm = (strips.get(0).points().get(0).y() - keel) / 60;
    for (Strip strip : strips) {
      List<Spot> edge = strip.points();
      // The first point is the upper edge aft, the last the lower.
      double aft = edge.get(0).y() - edge.get(edge.size() - 1).y();
      assertThat(aft / perMm).isCloseTo(5, within(0.01));
    }
    // Forward, of 12 mm, only three of 4 mm can run on: the others end on the keel.
    for (Strip strip : strips) {
      List<Spot> fore = strip.points().stream().filter(p -> p.x() > 393.99).toList();
      double high = fore.get(0).y() - fore.get(fore.size() - 1).y();
      assertThat(high / perMm).isCloseTo(strip.turn() <= 3 ? 4 : 0, within(0.01));
    }
  }

  @Test
  void layersAreAsThickAsReckoned() throws Exception {
    Given laminate =
        Given.the("laminate")
            .table(
                "zones",
                "zone,area [m²],cloth [g/m²],layers\nBottom,0.1,160,3\nSides,0.1,160,1.5\n")
            .quantity("fraction", "50 %");
    Sketch schedule = laminate.sketches().get(0);
    List<Line> layers =
        schedule.shapes().stream()
            .flatMap(
                s ->
                    s instanceof Line l && (l.ink() == Ink.DONE || l.ink() == Ink.DONE_NEXT)
                        ? List.of(l).stream()
                        : null)
            .toList();
    assertThat(layers).hasSize(5);
    assertThat(high(layers.get(4))).isCloseTo(high(layers.get(0)) / 2, within(1e-9));
    double bottom = high(layers.get(0)) + high(layers.get(1)) + high(layers.get(2));
    double sides = high(layers.get(3)) + high(layers.get(4));
    assertThat(bottom / sides)
        .isCloseTo(
            laminate.in("mm", "thickness_bottom") / laminate.in("mm", "thickness_sides"),
            within(1e-6));
    assertThat(
            Given.the("laminate")
                .quantity("area", "0.2 m²")
                .quantity("cloth", "160 g/m²")
                .quantity("fraction", "50 %")
                .sketches())
        .isEmpty();
  }

  private static double high(Line layer) {
    return layer.points().get(2).y() - layer.points().get(1).y();
  }

  @Test
  void theLeadIsDrawnBetweenTheTwoCentres() throws Exception {
    Given rig =
        Given.the("rig")
            .table("sails", "sail,area [cm²],x [mm],z [mm]\nMain,900,250,420\nJib,300,530,360")
            .table("plan", "sail,x [mm],z [mm]\nJib,650,170\nJib,430,190\nJib,430,650\n")
            .table("profile", "x [mm],z [mm]\n100,0\n500,0\n500,100\n100,100\n");
    Sketch plan = rig.sketches().get(0);
    List<Disc> centres = discs(plan, Ink.CENTROID);
    Line lead = lines(plan, Ink.CURVE).get(0);
    double perMm =
        lines(plan, Ink.HULL).get(0).points().stream().mapToDouble(Spot::x).max().orElseThrow()
            - lines(plan, Ink.HULL).get(0).points().stream()
                .mapToDouble(Spot::x)
                .min()
                .orElseThrow();
    perMm /= 400;
    assertThat(centres.get(0).at().x() - centres.get(1).at().x())
        .isCloseTo(rig.in("mm", "lead") * perMm, within(0.05));
    assertThat(lead.points().get(1).x()).isCloseTo(centres.get(0).at().x(), within(1e-9));
    assertThat(discs(plan, Ink.SAIL)).hasSize(1);
    assertThat(discs(plan, Ink.SAIL).get(0).radius())
        .isCloseTo(Math.sqrt(90_000 / Math.PI) * perMm, within(0.01));
    assertThat(lines(plan, Ink.SAIL)).hasSize(1);
  }

  @Test
  void whatCannotBeDrawnIsSaidWithItsPlace() {
    assertThatThrownBy(
            () ->
                Given.the("rig")
                    .table("sails", "sail,area [cm²],x [mm],z [mm]\nMain,900,250,420")
                    .table("plan", "sail,x [mm],z [mm]\nMian,1,1\nMain,2,2\nMain,2,1\n")
                    .sketches())
        .hasMessageContaining("There is no sail \"Mian\".");
    assertThatThrownBy(
            () ->
                Given.the("moulds")
                    .table(
                        "offsets",
                        "station,x [mm],keel [mm],chine [mm],chine half-breadth [mm],sheer [mm],"
                            + "sheer half-breadth [mm],WL 40 half-breadth [mm]\n"
                            + "0,0,0,70,30,60,40,30\n1,100,0,20,30,60,40,35\n")
                    .quantity("thickness", "2 mm")
                    .parts())
        .hasMessageContaining("\"chine\" lies above the sheer of this station.");
    assertThatThrownBy(
            () ->
                Given.the("planking")
                    .table("girths", "station,x [mm],girth [mm]\n0,0,60\n1,100,100\n")
                    .quantity("strip_width", "10 mm")
                    .quantity("laid", "11")
                    .yields())
        .hasMessageContaining("There are 10 strips on a side.");
  }
}
