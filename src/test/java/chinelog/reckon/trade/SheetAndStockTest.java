package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import org.junit.jupiter.api.Test;

class SheetAndStockTest {

  @Test // arithmetic: 500 mm scanned as 498, 300 as 301; worst case 1/500 + 0.5/498 of the factor
  void aScanIsStretchedDifferentlyEachWay() throws Exception {
    Given scan =
        Given.the("scan-scale")
            .quantity("true_x", "500 mm ± 1 mm")
            .quantity("scan_x", "498 mm ± 0.5 mm")
            .quantity("true_y", "300 mm")
            .quantity("scan_y", "301 mm");
    double factor = 500.0 / 498;
    assertThat(scan.number("factor_x")).isCloseTo(factor, within(1e-12));
    assertThat(scan.number("factor_y")).isCloseTo(300.0 / 301, within(1e-12));
    var tolerance = Objects.requireNonNull(scan.quantityOf("factor_x").tolerance());
    assertThat(tolerance.doubleValue()).isCloseTo(factor * (1.0 / 500 + 0.5 / 498), within(5e-6));
    assertThat(scan.quantityOf("factor_y").tolerance()).isNull();
  }

  @Test // closed form: a parallelogram whose corner is 2° off; its diagonals by the law of cosines
  void aSheetOutOfSquareIsFoundFromItsDiagonals() throws Exception {
    double lean = Math.sin(Math.toRadians(2));
    double up = Math.sqrt(400 * 400 + 300 * 300 + 2 * 400 * 300 * lean);
    double down = Math.sqrt(400 * 400 + 300 * 300 - 2 * 400 * 300 * lean);
    Given scan =
        Given.the("scan-scale")
            .quantity("true_x", "400 mm")
            .quantity("scan_x", "400 mm")
            .quantity("true_y", "300 mm")
            .quantity("scan_y", "300 mm")
            .quantity("diagonal_up", up + " mm")
            .quantity("diagonal_down", down + " mm");
    assertThat(scan.in("deg", "out_of_square")).isCloseTo(2, within(1e-9));
  }

  @Test
  void diagonalsOfAnotherRectangleAreRefused() {
    assertThatThrownBy(
            () ->
                Given.the("scan-scale")
                    .quantity("true_x", "400 mm")
                    .quantity("scan_x", "400 mm")
                    .quantity("true_y", "300 mm")
                    .quantity("scan_y", "300 mm")
                    .quantity("diagonal_up", "900 mm")
                    .quantity("diagonal_down", "500 mm")
                    .yields())
        .isInstanceOf(TradeException.class)
        .hasMessageContaining("no rectangle");
  }

  @Test // arithmetic: 25 mm at 1:16 is 1.5625 mm; 1/16 in is 1.5875 mm, 0.4 mm too large full size
  void theNearestStockedSizeTellsItsErrorAtFullSize() throws Exception {
    Given size =
        Given.the("stocked-size")
            .quantity("wanted", "1.5625 mm")
            .quantity("scale", "16")
            .table("sizes", "size [in]\n0.03125\n0.0625\n0.125");
    assertThat(size.in("in", "size")).isCloseTo(0.0625, within(1e-15));
    assertThat(size.in("mm", "error")).isCloseTo(0.025, within(1e-12));
    assertThat(size.in("mm", "full_error")).isCloseTo(0.4, within(1e-12));
    assertThat(size.in("%", "error_share")).isCloseTo(1.6, within(1e-9));
  }

  @Test
  void ofTwoSizesEquallyNearTheSmallerIsTaken() throws Exception {
    Given size =
        Given.the("stocked-size").quantity("wanted", "2 mm").table("sizes", "size [mm]\n3\n1");
    assertThat(size.in("mm", "size")).isEqualTo(1);
  }
}
