package chinelog.desk.sheets;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * A figure taken off a sheet, with how far it may be out.
 *
 * @param doubt at its worst, above zero
 */
record Measured(double value, double doubt, String unit) {

  /**
   * As a log has it, such as {@code 700.4 mm ± 0.9 mm}: as many digits as the doubt leaves room
   * for, the doubt rounded up.
   */
  String text() {
    int digits = Math.max(0, (int) Math.ceil(-Math.log10(doubt)));
    BigDecimal shown = BigDecimal.valueOf(value).setScale(digits, RoundingMode.HALF_EVEN);
    BigDecimal spread = BigDecimal.valueOf(doubt).setScale(digits, RoundingMode.CEILING);
    return shown.toPlainString() + " " + unit + " ± " + spread.toPlainString() + " " + unit;
  }
}
