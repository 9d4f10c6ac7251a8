package chinelog.log.records;

import java.math.BigDecimal;

/**
 * How long the maker wants an instalment of the series to be.
 *
 * @param much above 0
 */
public record PostLength(BigDecimal much, Measure measure) {

  /** What a length is counted in. */
  public enum Measure {
    WORDS,
    /** Of silent reading. */
    MINUTES
  }
}
