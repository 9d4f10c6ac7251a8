package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Parts on sheets, what fairing takes, and strips that stop short; closed forms. */
class CuttingTest {

  @Test // 6 parts of 100 × 50 mm cover 300 × 100 mm whole
  void partsThatFillASheetNeedOne() throws Exception {
    Given cutting =
        Given.the("cutting")
            .table("parts", "part,length [mm],width [mm],count\nA,100,50,6")
            .quantity("sheet_length", "300 mm")
            .quantity("sheet_width", "100 mm");
    assertThat(cutting.number("sheets")).isEqualTo(1);
    assertThat(cutting.in("%", "used")).isCloseTo(100, within(1e-9));
    cutting.quantity("kerf", "1 mm");
    assertThat(cutting.number("sheets")).isGreaterThan(1);
  }

  @Test
  void noTwoPartsOverlapAndNoneLeavesItsSheet() throws Exception {
    Random random = new Random(7);
    StringBuilder parts = new StringBuilder("part,length [mm],width [mm]\n");
    List<double[]> sizes = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      int length = 20 + random.nextInt(200);
      int width = 10 + random.nextInt(90);
      sizes.add(new double[] {length, width});
      parts.append('p').append(i).append(',').append(length).append(',').append(width).append('\n');
    }
    Given cutting =
        Given.the("cutting")
            .table("parts", parts.toString())
            .quantity("sheet_length", "600 mm")
            .quantity("sheet_width", "300 mm")
            .quantity("kerf", "1 mm");
    List<double[]> placed = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      double x = cutting.in("mm", "along_p" + i);
      double y = cutting.in("mm", "across_p" + i);
      double sheet = cutting.number("sheet_p" + i);
      assertThat(x + sizes.get(i)[0]).isLessThanOrEqualTo(600 + 1e-9);
      assertThat(y + sizes.get(i)[1]).isLessThanOrEqualTo(300 + 1e-9);
      for (int k = 0; k < i; k++) {
        double[] other = placed.get(k);
        boolean apart =
            other[0] != sheet
                || other[1] + sizes.get(k)[0] + 1 <= x + 1e-9
                || x + sizes.get(i)[0] + 1 <= other[1] + 1e-9
                || other[2] + sizes.get(k)[1] + 1 <= y + 1e-9
                || y + sizes.get(i)[1] + 1 <= other[2] + 1e-9;
        assertThat(apart).as("p" + i + " and p" + k).isTrue();
      }
      placed.add(new double[] {sheet, x, y});
    }
    assertThat(cutting.number("sheets")).isGreaterThanOrEqualTo(cutting.number("sheets_by_area"));
  }

  @Test
  void aPartLargerThanTheSheetIsRefused() {
    assertThatThrownBy(
            () ->
                Given.the("cutting")
                    .table("parts", "part,length [mm],width [mm]\nA,700,50")
                    .quantity("sheet_length", "600 mm")
                    .quantity("sheet_width", "100 mm")
                    .yields())
        .hasMessageContaining("larger than the sheet");
  }

  @Test // 0.2 m² × 0.5 mm × 400 kg/m³ = 40 g off; 10 % × 0.4 mm = 8 cm³ stay of 16 put on
  void fairingTakesOffAndPutsOnWhatItsDepthsSay() throws Exception {
    Given fairing =
        Given.the("fairing")
            .quantity("area", "0.2 m²")
            .quantity("sanded", "0.5 mm")
            .quantity("thickness", "1.6 mm")
            .quantity("wood_density", "400 kg/m³")
            .quantity("filled", "10 %")
            .quantity("filler_depth", "0.4 mm")
            .quantity("filler_density", "1 g/cm³")
            .quantity("filler_loss", "50 %");
    assertThat(fairing.in("g", "wood_lost")).isCloseTo(40, within(1e-9));
    assertThat(fairing.in("mm", "left")).isCloseTo(1.1, within(1e-9));
    assertThat(fairing.in("mL", "filler")).isCloseTo(16, within(1e-9));
    assertThat(fairing.in("g", "change")).isCloseTo(-32, within(1e-9));
  }

  /**
   * Girths 100, 200, 100 mm at 0, 500, 1000 mm; strips of 20 mm, least 10 mm: ten strips, each of
   * which at 100 mm would be just 10 mm wide, so all run. With a least width of 16 mm strip n ends
   * where the girth is 16 n.
   */
  @Test
  void aShortStripEndsWhereTheGirthHoldsNoMore() throws Exception {
    Given planking =
        Given.the("planking")
            .table("girths", "x [mm],girth [mm]\n0,100\n500,200\n1000,100")
            .quantity("strip_width", "20 mm")
            .quantity("least_width", "16 mm")
            .quantity("wastage", "0 %");
    assertThat(planking.in("mm", "strip_10")).isCloseTo(400, within(1e-6));
    assertThat(planking.in("mm", "strip_7")).isCloseTo(880, within(1e-6));
    double all = 6 * 1000 + 880 + 720 + 560 + 400;
    assertThat(planking.in("mm", "strip_length_real")).isCloseTo(2 * all, within(1e-6));
  }
}
