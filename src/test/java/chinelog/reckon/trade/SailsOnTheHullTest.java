package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Centres of sails, where they stand on the hull, and what they do to it; closed forms. */
class SailsOnTheHullTest {

  @Test // a triangle by cross widths has its centre at a third of foot and luff
  void aTriangleByWidthsHasItsCentreWhereATriangleHas() throws Exception {
    Given main =
        Given.the("sail")
            .word("shape", "main")
            .quantity("luff", "1600 mm")
            .quantity("foot", "400 mm")
            .quantity("quarter", "300 mm")
            .quantity("half", "200 mm")
            .quantity("three_quarter", "100 mm")
            .quantity("seven_eighths", "50 mm");
    assertThat(main.in("mm", "ce_x")).isCloseTo(400 / 3.0, within(1e-9));
    assertThat(main.in("mm", "ce_z")).isCloseTo(1600 / 3.0, within(1e-9));
  }

  /** A right-angled leech: foot 300, luff 400, leech 500; the roach a parabola of 40 mm on it. */
  @Test
  void aRoachMovesTheCentreByItsOwnParabola() throws Exception {
    Given sail =
        Given.the("sail")
            .quantity("luff", "400 mm")
            .quantity("foot", "300 mm")
            .quantity("leech", "500 mm")
            .quantity("roach_half", "40 mm");
    double plain = 60000;
    double roach = 2.0 / 3 * 500 * 40;
    double x = (plain * 100 + roach * (150 + 16 * 0.8)) / (plain + roach);
    double z = (plain * 400 / 3 + roach * (200 + 16 * 0.6)) / (plain + roach);
    assertThat(sail.in("mm²", "area")).isCloseTo(plain + roach, within(1e-6));
    assertThat(sail.in("mm", "ce_x")).isCloseTo(x, within(1e-9));
    assertThat(sail.in("mm", "ce_z")).isCloseTo(z, within(1e-9));
  }

  @Test // raked aft by 90° the luff lies along the deck: x = tack − ce_z, z = tack − ce_x
  void theTackAndTheRakeSetTheCentreOnTheHull() throws Exception {
    Given sail =
        Given.the("sail")
            .quantity("luff", "400 mm")
            .quantity("foot", "300 mm")
            .quantity("leech", "500 mm")
            .quantity("tack_x", "700 mm")
            .quantity("tack_z", "150 mm");
    assertThat(sail.in("mm", "x")).isCloseTo(600, within(1e-9));
    assertThat(sail.in("mm", "z")).isCloseTo(150 + 400 / 3.0, within(1e-9));
    sail.quantity("rake", "90 deg");
    assertThat(sail.in("mm", "x")).isCloseTo(700 - 400 / 3.0, within(1e-9));
    assertThat(sail.in("mm", "z")).isCloseTo(50, within(1e-9));
  }

  @Test // sails told by figures are those of a table
  void sailsByFiguresAreSailsByTable() throws Exception {
    Given table =
        Given.the("rig")
            .table("sails", "area [cm²],x [mm],z [mm]\n2600,420,700\n1300,690,560")
            .quantity("clr", "460 mm");
    Given figures =
        Given.the("rig")
            .quantity("main_area", "2600 cm²")
            .quantity("main_x", "420 mm")
            .quantity("main_z", "700 mm")
            .quantity("fore_area", "1300 cm²")
            .quantity("fore_x", "690 mm")
            .quantity("fore_z", "560 mm")
            .quantity("clr", "460 mm");
    for (String yield : new String[] {"ce_x", "ce_z", "lead"}) {
      assertThat(figures.in("mm", yield)).isCloseTo(table.in("mm", yield), within(1e-9));
    }
    assertThat(figures.in("mm", "lead")).isCloseTo(50, within(1e-9));
  }

  /** At rest the wind's moment p A h cos² φ is the hull's, g Δ GM sin φ. */
  @Test
  void sheLiesWhereTheMomentsAreEqual() throws Exception {
    Given under =
        Given.the("sail-carrying")
            .quantity("area", "0.4 m²")
            .quantity("arm", "0.7 m")
            .quantity("displacement", "5 kg")
            .quantity("gm", "0.2 m")
            .quantity("wind", "5 m/s")
            .quantity("water_density", "1 g/cm³");
    double phi = under.in("rad", "heel");
    double pressure = 0.5 * 1.225 * 25;
    assertThat(under.in("Pa", "pressure")).isCloseTo(pressure, within(1e-9));
    assertThat(pressure * 0.4 * 0.7 * Math.pow(Math.cos(phi), 2))
        .isCloseTo(9.80665 * 5 * 0.2 * Math.sin(phi), within(1e-9));
    assertThat(under.number("ratio")).isCloseTo(0.4 / Math.pow(0.005, 2 / 3.0), within(1e-9));
  }

  /**
   * A printed worked example: 500 sq ft and 10,000 lb, 156.25 cu ft of sea water at 64 lb, SA/D
   * 17.24 (Boneyard Tools, "Sail Area to Displacement (SA/D) Calculator", examples). Another prints
   * 18.71 for 810 sq ft and 18,250 lb (documentation of sailcalc 1.0.0), where 64 lb give 18.70.
   */
  @Test
  void theRatioOfSailToDisplacementIsThatOfPrintedExamples() throws Exception {
    assertThat(ratio("500 ft²", "10000 lb")).isCloseTo(17.24, within(0.005));
    assertThat(ratio("810 ft²", "18250 lb")).isCloseTo(18.71, within(0.02));
  }

  private static double ratio(String area, String displacement) throws Exception {
    return Given.the("sail-carrying")
        .quantity("area", area)
        .quantity("arm", "30 ft")
        .quantity("displacement", displacement)
        .quantity("gm", "3 ft")
        .quantity("wind", "5 m/s")
        .quantity("water_density", "64 lb/ft³")
        .number("ratio");
  }
}
