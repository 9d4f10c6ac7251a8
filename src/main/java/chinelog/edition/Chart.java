package chinelog.edition;

import java.math.BigDecimal;
import java.util.List;

/**
 * Numbers to be drawn, with the words that go with them; nothing in it is more exact than what is
 * printed.
 *
 * @param id such as {@code hours-by-stage}; unique in the edition
 * @param kind how it is drawn
 * @param title a full heading
 * @param description what it shows, in a sentence or two, for those who cannot see it
 * @param unit symbol of all values
 * @param categories names of the places along the axis: stages, or dates as shown
 * @param series one or two
 */
public record Chart(
    String id,
    Kind kind,
    String title,
    String description,
    String unit,
    List<String> categories,
    List<Series> series) {

  /** The greatest of all values, as printed; 0 if there are none. */
  public double highest() {
    return series.stream()
        .flatMap(s -> s.values().stream())
        .mapToDouble(Number::doubleValue)
        .max()
        .orElse(0);
  }

  /** The kinds of chart. */
  public enum Kind {
    /** A bar for each category, horizontally. */
    BARS,
    /** A stepped line over time; categories are ISO dates. */
    STEPS
  }

  /**
   * One row of numbers.
   *
   * @param values one for each category, rounded as printed
   * @param shown the same as printed
   */
  public record Series(String name, List<BigDecimal> values, List<String> shown) {}
}
