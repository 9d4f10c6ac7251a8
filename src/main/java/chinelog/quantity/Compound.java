package chinelog.quantity;

import java.util.Optional;
import java.util.stream.Stream;

/** Units that are written in two steps, such as {@code 5 ft 3 1/2 in}; counted in the smaller. */
enum Compound {
  FEET_AND_INCHES("ft", "in", 12),
  POUNDS_AND_OUNCES("lb", "oz", 16),
  HOURS_AND_MINUTES("h", "min", 60);

  final String large;
  final String small;
  final int ratio;

  Compound(String large, String small, int ratio) {
    this.large = large;
    this.small = small;
    this.ratio = ratio;
  }

  String symbol() {
    return large + " " + small;
  }

  static Optional<Compound> findBySymbol(String symbol) {
    return Stream.of(values()).filter(c -> c.symbol().equals(symbol)).findFirst();
  }
}
