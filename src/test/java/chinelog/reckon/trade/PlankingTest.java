package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;

class PlankingTest {

  private static Given girths(String csv) {
    return Given.the("planking").table("girths", "station,x [mm],girth [mm]\n" + csv);
  }

  @Test // W22: arithmetic, half girth 412 mm by strips that cover 6 mm
  void stripsAreCountedRoundTheFullestStation() throws Exception {
    Given hull = girths("0,0,350\n1,300,412\n2,600,300").quantity("strip_width", "6 mm");
    assertThat(hull.number("strips")).isEqualTo(69);
    assertThat(hull.in("mm", "width_2")).isCloseTo(300 / 69.0, within(1e-9));
    assertThat(hull.number("wedges_fore")).isZero();
  }

  @Test // closed form: a quarter of a circle of 50 mm, π r / 2 round, shared by ten strips
  void aStripsWidthLiesWithinItsOwnEstimate() throws Exception {
    StringBuilder csv = new StringBuilder("station,x [mm],keel [mm]");
    StringBuilder row = new StringBuilder(",0");
    for (int z = 0; z <= 50; z += 10) {
      csv.append(",WL ").append(z).append(" half-breadth [mm]");
      row.append(',').append(Math.sqrt(2500 - (50.0 - z) * (50 - z)));
    }
    for (int x = 0; x <= 200; x += 100) {
      csv.append('\n').append(x).append(',').append(x).append(row);
    }
    Given shell =
        Given.the("planking").table("offsets", csv.toString()).quantity("strip_width", "8 mm");
    assertThat(shell.number("strips")).isEqualTo(10);
    BigDecimal told = shell.quantityOf("width_100").tolerance();
    double doubt = told == null ? 0.01 : told.doubleValue();
    assertThat(shell.in("mm", "width_100")).isCloseTo(Math.PI * 2.5, within(doubt));
    assertThat(doubt).isLessThan(0.1);
  }

  @Test // W21: ⌊(100 + 1) ÷ (2 + 1)⌋ = 33, not 50
  void theKerfCostsStrips() throws Exception {
    Given hull =
        girths("0,0,20\n1,300,20")
            .quantity("strip_width", "2 mm")
            .quantity("stock_length", "1 m")
            .quantity("sheet_width", "100 mm")
            .quantity("kerf", "1 mm");
    assertThat(hull.number("strips_per_sheet")).isEqualTo(33);
    // 2 × 10 strips of 300 mm, 10 % cut away: 6.667 m, so 7 strips of 1 m from one sheet.
    assertThat(hull.in("m", "strip_length")).isCloseTo(6 / 0.9, within(1e-12));
    assertThat(hull.number("pieces")).isEqualTo(7);
    assertThat(hull.number("sheets")).isEqualTo(1);
  }

  @Test // arithmetic: 100 mm by 5 mm is 20 strips; 40 mm holds 16 of 2.5 mm
  void stripsStopWhereTheyWouldBeTooNarrow() throws Exception {
    Given hull = girths("0,0,80\n1,100,100\n2,200,60\n3,300,40").quantity("strip_width", "5 mm");
    assertThat(hull.number("strips")).isEqualTo(20);
    assertThat(hull.number("reach_2")).isEqualTo(20);
    assertThat(hull.in("mm", "width_2")).isCloseTo(3, within(1e-12));
    assertThat(hull.number("reach_3")).isEqualTo(16);
    assertThat(hull.in("mm", "width_3")).isCloseTo(2.5, within(1e-12));
    assertThat(hull.number("wedges_fore")).isEqualTo(4);
    assertThat(hull.number("wedges_aft")).isZero();
    assertThat(hull.in("mm", "taper_fore")).isCloseTo(2.5, within(1e-12));
    assertThat(hull.in("mm", "taper_aft")).isCloseTo(1, within(1e-12));
    assertThat(hull.in("mm", "all_to")).isEqualTo(200);
    assertThat(hull.in("mm", "all_from")).isEqualTo(0);
  }

  /** Common practice, no source: full-length strips to the waterline amidships, others taper. */
  @Test
  void fullWidthStripsRunDownToTheWaterlineAmidships() throws Exception {
    Given demo =
        Given.the("planking")
            .table("offsets", Given.resource("offsets.csv"))
            .quantity("siding", "2.5 mm")
            .quantity("strip_width", "3/16 in")
            .quantity("draught", "52 mm");
    // Station 6: 149 mm of girth, of which 98 mm are wetted; 51 mm hold ten strips of 4.76 mm.
    assertThat(demo.number("strips")).isEqualTo(32);
    assertThat(demo.number("full_strips")).isEqualTo(10);
    assertThat(demo.number("reach_6")).isEqualTo(32);
    assertThat(demo.number("wedges_fore")).isGreaterThan(demo.number("wedges_aft"));
    for (int i = 0; i <= 11; i++) {
      double tapered = demo.number("reach_" + i) - 10;
      if (tapered > 0) {
        double girth = 10 * 4.7625 + tapered * demo.in("mm", "width_" + i);
        assertThat(girth).isLessThanOrEqualTo(156);
      }
    }
  }

  /** Common practice, no source: 1/16 in sanded fair leaves 3/64 in, or a little under. */
  @Test
  void fairingLeavesThreeSixtyFourths() throws Exception {
    Given strips =
        girths("0,0,100\n1,300,100")
            .quantity("strip_width", "3/16 in")
            .quantity("strip_thickness", "1/16 in");
    assertThat(strips.in("in", "faired_most")).isEqualTo(3.0 / 64);
    assertThat(strips.in("in", "faired_most_64th_error")).isZero();
    assertThat(strips.in("in", "faired_least")).isCloseTo(1.0 / 24, within(1e-15));
    assertThat(strips.in("in", "faired_least")).isLessThan(3.0 / 64);
    assertThat(strips.in("in", "faired_least_64th")).isEqualTo(3.0 / 64);
    assertThat(strips.in("in", "faired_least_64th_error"))
        .isCloseTo(3.0 / 64 - 1.0 / 24, within(1e-15));
  }

  @Test // W19: 0.35 m² × 1.5 mm of basswood at 416.48 kg/m³ (GNU Units density)
  void plankingWeighsAreaTimesThicknessTimesDensity() throws Exception {
    Given planking =
        girths("0,0,175\n1,1000,175")
            .quantity("strip_width", "5 mm")
            .quantity("strip_thickness", "1.5 mm")
            .quantity("density", "416.480047722964 kg/m³");
    assertThat(planking.in("g", "mass")).isCloseTo(218.65202625, within(0.01));
  }

  @Test
  void aStripWiderThanTheGirthIsRefused() {
    assertThatThrownBy(() -> girths("0,0,10\n1,300,12").quantity("strip_width", "3/16 ft").yields())
        .isInstanceOfSatisfying(
            TradeException.class,
            e -> {
              assertThat(e.what()).contains("wider than the greatest girth");
              assertThat(e.input()).isEqualTo("strip_width");
            });
  }

  @Test
  void aSheetOfUnknownLengthIsRefused() {
    assertThatThrownBy(
            () ->
                girths("0,0,10\n1,9,9")
                    .quantity("strip_width", "2 mm")
                    .quantity("sheet_width", "100 mm")
                    .yields())
        .isInstanceOf(TradeException.class)
        .hasMessageContaining("how long");
  }

  @Test
  void aWidthOfZeroAndAWholeWastageAreRefused() {
    assertThatThrownBy(() -> girths("0,0,10\n1,9,9").quantity("strip_width", "0 mm").yields())
        .isInstanceOf(TradeException.class);
    assertThatThrownBy(
            () ->
                girths("0,0,10\n1,9,9")
                    .quantity("strip_width", "2 mm")
                    .quantity("wastage", "100 %")
                    .yields())
        .isInstanceOf(TradeException.class)
        .hasMessageContaining("wastage");
  }
}
