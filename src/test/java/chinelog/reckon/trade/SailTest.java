package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class SailTest {

  private static Given triangle(String luff, String foot, String leech) {
    return Given.the("sail").quantity("luff", luff).quantity("foot", foot).quantity("leech", leech);
  }

  @Test // A01, A02: classical (Heron of Alexandria)
  void wholeNumberedTrianglesHaveWholeAreas() throws Exception {
    assertThat(triangle("3 m", "4 m", "5 m").in("m²", "area")).isCloseTo(6, within(1e-13));
    assertThat(triangle("13 m", "14 m", "15 m").in("m²", "area")).isCloseTo(84, within(1e-12));
  }

  @Test // A03: formula
  void aSailHasTheAreaOfItsSides() throws Exception {
    assertThat(triangle("1600 mm", "350 mm", "1650 mm").in("cm²", "area"))
        .isCloseTo(2798.21371592664, within(0.01));
  }

  @Test // A04: Kahan, Miscalculating Area and Angles of a Needle-like Triangle (table, from memory)
  void aNeedleKeepsItsDigits() throws Exception {
    double area = triangle("100000 m", "99999.99979 m", "0.00029 m").in("m²", "area");
    assertThat(area / 9.9999999895).isCloseTo(1, within(1e-7));
  }

  @Test // A05: Kahan's order, 40-digit mpmath; a = 2^50, b = 2^50 − 0.5, c = 0.75
  void aNeedleOfBinaryLengthsKeepsTwelveDigits() throws Exception {
    double area = triangle("1125899906842624 m", "1125899906842623.5 m", "0.75 m").in("m²", "area");
    assertThat(area / 314698590945098.0).isCloseTo(1, within(1e-12));
  }

  @Test // A06: definition; an error, not NaN
  void sidesThatDoNotCloseAreRefused() {
    assertThatThrownBy(() -> triangle("1 m", "2 m", "4 m").yields())
        .isInstanceOfSatisfying(
            TradeException.class,
            e -> {
              assertThat(e.what()).contains("do not close");
              assertThat(e.input()).isEqualTo("leech");
            });
  }

  @Test // A07: classical; sides 3, 4, 12, 13 on a diagonal of 5
  void aQuadrilateralIsTwoTriangles() throws Exception {
    Given sail =
        triangle("3 m", "4 m", "13 m")
            .word("shape", "quadrilateral")
            .quantity("head", "12 m")
            .quantity("diagonal", "5 m");
    assertThat(sail.in("m²", "area")).isCloseTo(36, within(1e-12));
  }

  @Test // closed form: a square's centre is its middle
  void aSquareSailPullsInItsMiddle() throws Exception {
    Given sail =
        triangle("2 m", "2 m", "2 m")
            .word("shape", "quadrilateral")
            .quantity("head", "2 m")
            .quantity("diagonal", "2.8284271247461903 m");
    assertThat(sail.in("m²", "area")).isCloseTo(4, within(1e-12));
    assertThat(sail.in("m", "ce_x")).isCloseTo(1, within(1e-12));
    assertThat(sail.in("m", "ce_z")).isCloseTo(1, within(1e-12));
  }

  private static Given corners(String csv) {
    return Given.the("sail").word("shape", "corners").table("corners", "x [mm],z [mm]\n" + csv);
  }

  @Test // A08: formula
  void cornersEncloseTheirArea() throws Exception {
    assertThat(corners("0,0\n400,0\n420,900\n0,1000").in("mm²", "area"))
        .isCloseTo(390000, within(1e-6));
    assertThat(corners("0,1000\n420,900\n400,0\n0,0").in("mm²", "area"))
        .isCloseTo(390000, within(1e-6));
  }

  @Test // A14: closed form, the mean of the corners
  void aTrianglePullsInTheMeanOfItsCorners() throws Exception {
    Given sail = corners("0,0\n350,0\n20,1600");
    assertThat(sail.in("mm", "ce_x")).isCloseTo(123.333333333333, within(1e-9));
    assertThat(sail.in("mm", "ce_z")).isCloseTo(533.333333333333, within(1e-9));
  }

  @Test // A09: Micro class rule 5.02.01 (formula from a class forum page); a plain triangle, P E /
  // 2
  void theMainsRuleIsExactForATriangle() throws Exception {
    Given main =
        Given.the("sail")
            .word("shape", "main")
            .quantity("luff", "10 m")
            .quantity("foot", "4 m")
            .quantity("quarter", "3 m")
            .quantity("half", "2 m")
            .quantity("three_quarter", "1 m")
            .quantity("seven_eighths", "0.5 m");
    assertThat(main.in("m²", "area")).isCloseTo(20, within(1e-12));
  }

  @Test // A10: IRC rule 21.7.1 as quoted by the rating office; 3 HTW, or a triangle is not exact
  void theHeadsailsRuleIsExactForATriangle() throws Exception {
    Given jib =
        Given.the("sail")
            .word("shape", "headsail")
            .quantity("luff", "12 m")
            .quantity("perpendicular", "4 m")
            .quantity("half", "2 m")
            .quantity("three_quarter", "1 m")
            .quantity("seven_eighths", "0.5 m");
    assertThat(jib.in("m²", "area")).isCloseTo(24, within(1e-12));
  }

  @Test // A11: ISAF spinnaker formula as quoted in a class discussion
  void theSpinnakersRuleComesOut() throws Exception {
    Given spinnaker = triangle("10 m", "6 m", "10 m").word("shape", "spinnaker");
    assertThat(spinnaker.quantity("half", "4.5 m").in("m²", "area")).isCloseTo(40, within(1e-12));
  }

  @Test // closed form: Simpson's rules are exact for a parabola 4 r u (1 − u), two thirds of L r
  void bothRoachRulesAgreeOnAParabola() throws Exception {
    double exact = 2.0 / 3 * 1650 * 60 / 100;
    Given three = triangle("1600 mm", "350 mm", "1650 mm").quantity("roach_half", "60 mm");
    assertThat(three.in("cm²", "roach")).isCloseTo(exact, within(1e-9));
    String third = "53.3333333333333333333 mm";
    Given four =
        triangle("1600 mm", "350 mm", "1650 mm")
            .quantity("roach_lower", third)
            .quantity("roach_upper", third);
    assertThat(four.in("cm²", "roach")).isCloseTo(exact, within(1e-9));
    assertThat(four.in("cm²", "area")).isCloseTo(2798.21371592664 + exact, within(0.01));
  }

  @Test // arithmetic; common practice, no source
  void theSailsLeadTheProfile() throws Exception {
    Given rig =
        Given.the("rig")
            .table("sails", "sail,area [cm²],x [mm],z [mm]\nmain,2000,300,700\njib,1000,480,550")
            .table("profile", "x [mm],z [mm]\n0,0\n600,0\n600,-50\n0,-50")
            .quantity("lwl", "600 mm");
    assertThat(rig.in("mm", "ce_x")).isCloseTo(360, within(1e-9));
    assertThat(rig.in("mm", "ce_z")).isCloseTo(650, within(1e-9));
    assertThat(rig.in("mm", "clr")).isCloseTo(300, within(1e-9));
    assertThat(rig.in("mm", "lead")).isCloseTo(60, within(1e-9));
    assertThat(rig.in("%", "lead_share")).isCloseTo(10, within(1e-9));
  }

  @Test // closed forms of the three tapers; a cone weighs a third of its cylinder
  void sparsTaperAsTold() throws Exception {
    Given spar = Given.the("spar").quantity("length", "400 mm").quantity("diameter", "12 mm");
    assertThat(spar.word("taper", "quarters").in("mm", "diameter_2"))
        .isCloseTo(12 * 14.0 / 15, within(1e-12));
    spar.quantity("end", "8 mm");
    assertThat(spar.word("taper", "straight").in("mm", "diameter_2")).isCloseTo(10, within(1e-12));
    assertThat(spar.word("taper", "swelled").in("mm", "diameter_2")).isCloseTo(11, within(1e-12));
    double mass =
        Given.the("spar")
            .quantity("length", "400 mm")
            .quantity("diameter", "12 mm")
            .quantity("end", "12 mm")
            .quantity("density", "500 kg/m³")
            .in("g", "mass");
    assertThat(mass).isCloseTo(Math.PI * 36 * 400 * 500e-6, within(1e-9));
    assertThat(heavy("straight", 12, 0.001)).isCloseTo(Math.PI * 12 * 400 * 500e-6, within(1e-3));
    // d = 12 − 4 u²: the mean of d² is 144 − 2/3 · 12 · 4 + 16/5, however few parts are told.
    assertThat(heavy("swelled", 12, 8))
        .isCloseTo(Math.PI / 4 * (144 - 32 + 3.2) * 400 * 500e-6, within(1e-9));
  }

  private static double heavy(String taper, double diameter, double end) throws Exception {
    return Given.the("spar")
        .word("taper", taper)
        .quantity("length", "400 mm")
        .quantity("parts", "2")
        .quantity("diameter", diameter + " mm")
        .quantity("end", end + " mm")
        .quantity("density", "500 kg/m³")
        .in("g", "mass");
  }
}
