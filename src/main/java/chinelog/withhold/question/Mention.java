package chinelog.withhold.question;

import chinelog.quantity.Unit;
import org.jspecify.annotations.Nullable;

/**
 * A figure that stands in a text.
 *
 * @param value as written
 * @param step the value of its last digit, or of its fraction
 * @param unit null where none is written
 * @param spelled whether it is written in words
 */
record Mention(
    int start, int end, double value, double step, @Nullable Unit unit, boolean spelled) {

  /** How many steps it counts: 187 for "187 mm", 304 for "3.04 m". */
  double fineness() {
    return Math.abs(value) / step;
  }

  Mention with(@Nullable Unit other) {
    return new Mention(start, end, value, step, other, spelled);
  }
}
