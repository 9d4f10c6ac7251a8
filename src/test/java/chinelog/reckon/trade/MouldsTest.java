package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MouldsTest {

  private static Given moulds(String csv, String thickness) {
    return Given.the("moulds").table("offsets", csv).quantity("thickness", thickness);
  }

  @Test // closed form: the inner outline of a circle is a circle less the thickness
  void aCylindersMouldIsASmallerCircle() throws Exception {
    StringBuilder csv = new StringBuilder("station,x [mm],keel [mm]");
    StringBuilder row = new StringBuilder();
    for (int z = 0; z <= 50; z += 5) {
      csv.append(",WL ").append(z).append(" [mm]");
      row.append(String.format(Locale.ROOT, ",%.12f", Math.sqrt(2500 - (50.0 - z) * (50 - z))));
    }
    for (int x = 0; x <= 200; x += 100) {
      csv.append('\n').append(x).append(',').append(x).append(",0").append(row);
    }
    Given cylinder = moulds(csv.toString(), "2 mm");
    for (int z = 10; z <= 45; z += 5) {
      double inner = Math.sqrt(48 * 48 - (50.0 - z) * (50 - z));
      assertThat(cylinder.in("mm", "half_100_" + z)).isCloseTo(inner, within(0.12));
      BigDecimal told = cylinder.quantityOf("half_100_" + z).tolerance();
      double doubt = told == null ? 0.01 : told.doubleValue();
      assertThat(Math.abs(cylinder.in("mm", "half_100_" + z) - inner))
          .as("within its own estimate at %d mm", z)
          .isLessThanOrEqualTo(doubt);
      // Merely inward would be wrong by far more low down.
      if (z <= 20) {
        double inward = Math.sqrt(2500 - (50.0 - z) * (50 - z)) - 2;
        assertThat(Math.abs(inner - inward)).isGreaterThan(0.4);
      }
    }
  }

  @Test // closed form: parallel planes, upright sides that open at one in two
  void uprightSidesThatTaperLoseMoreThanTheThickness() throws Exception {
    Given wedge =
        moulds(
            "station,x [mm],keel [mm],WL 0 [mm],WL 50 [mm]\n0,0,0,10,10\n1,100,0,60,60\n"
                + "2,200,0,110,110",
            "2 mm");
    assertThat(wedge.in("mm", "half_1_50")).isCloseTo(60 - 2 * Math.sqrt(1.25), within(1e-9));
  }

  @Test // closed form: parallel planes, sides that flare at 45° and run straight fore and aft
  void sidesThatFlareLoseTheThicknessSquareToThem() throws Exception {
    Given wedge =
        moulds(
            "station,x [mm],keel [mm],WL 0 [mm],WL 50 [mm]\n0,0,0,0,50\n1,100,0,0,50\n"
                + "2,200,0,0,50",
            "2 mm");
    assertThat(wedge.in("mm", "half_1_50")).isCloseTo(50 - 2 * Math.sqrt(2), within(1e-9));
  }

  @Test // closed form: both slopes at once, y = z/2 + x/4, so t √(1 + 1/4 + 1/16) straight inwards
  void bothSlopesTogetherAreThoseOfOnePlane() throws Exception {
    Given wedge =
        moulds(
            "station,x [mm],keel [mm],WL 0 [mm],WL 50 [mm]\n0,0,0,0,25\n1,100,0,25,50\n"
                + "2,200,0,50,75",
            "2 mm");
    assertThat(wedge.in("mm", "half_1_50")).isCloseTo(50 - 2 * Math.sqrt(1.3125), within(1e-9));
  }

  /**
   * The demo hull's moulds, against the inner surface of its skin: points of the surface that the
   * offsets were taken from, moved 2 mm along its normal and cut at the station. Offsets to 0.1 mm
   * and stations 60 mm apart leave a tenth of a millimetre.
   */
  @ParameterizedTest
  @CsvSource({
    "2, 61.62, 74.79, 81.80, 85.37, 86.35",
    "5, 77.60, 84.55, 88.98, 91.70, 92.83",
    "7, 63.03, 71.59, 78.40, 84.07, 88.15",
    "9, 30.83, 38.87, 46.88, 55.27, 62.80",
    "10, 14.15, 19.79, 25.97, 33.10, 40.09"
  })
  void theDemoHullsMouldsAgreeWithTheInsideOfItsSkin(
      String station, double at40, double at52, double at65, double at80, double at95)
      throws Exception {
    Given demo = moulds(Given.resource("offsets.csv"), "2 mm").quantity("siding", "2.5 mm");
    double[] expected = {at40, at52, at65, at80, at95};
    int[] heights = {40, 52, 65, 80, 95};
    for (int i = 0; i < heights.length; i++) {
      assertThat(demo.in("mm", "half_" + station + "_" + heights[i]))
          .isCloseTo(expected[i], within(0.1));
    }
    assertThat(demo.in("mm", "half_2_30")).isLessThan(45.3);
  }

  @Test
  void theDemoHullsMouldsLieInsideItsOffsets() throws Exception {
    Given demo = moulds(Given.resource("offsets.csv"), "2 mm").quantity("siding", "2.5 mm");
    // Nearly upright amidships at the sheer; well forward the planking is cut at a slant.
    assertThat(90.2 - demo.in("mm", "half_7_95")).isBetween(2.0, 2.2);
    assertThat(41.3 - demo.in("mm", "half_9_52")).isBetween(2.2, 3.0);
    assertThat(demo.word("station", "9").yields()).allMatch(y -> y.name().startsWith("half_9_"));
  }

  @Test
  void aStationThatIsNotThereIsRefused() {
    assertThatThrownBy(
            () -> moulds(Given.resource("offsets.csv"), "2 mm").word("station", "99").yields())
        .isInstanceOf(TradeException.class)
        .hasMessageContaining("99");
  }
}
