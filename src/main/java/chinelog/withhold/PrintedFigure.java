package chinelog.withhold;

import java.time.LocalDate;

/**
 * A figure as it was printed for readers, who keep what they have once been given.
 *
 * @param readers id of those for whom it was printed
 * @param since the day of the edition that first printed it
 * @param fact its name, such as {@code hull.loa}
 * @param printed as shown, such as {@code 700 mm}
 * @param value the printed value, in coherent SI units
 * @param step the value of its last digit, in the same unit; 0 for an exact count
 */
public record PrintedFigure(
    String readers, LocalDate since, String fact, String printed, double value, double step) {

  /** Whether it tells the same as a value of today, to its last digit. */
  boolean tells(double now) {
    return Math.abs(value - now) <= step / 2 + Math.abs(now) * 1e-9;
  }
}
