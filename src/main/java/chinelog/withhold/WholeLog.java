package chinelog.withhold;

import chinelog.log.records.Log;
import chinelog.reckon.Facts;
import chinelog.reckon.Reckoner;
import java.time.LocalDate;

/**
 * A log with everything that it holds under agreements: nothing of it may be shown unasked.
 *
 * @param facts reckoned from it
 */
record WholeLog(Log log, Facts facts) {

  /** As it stood on a day. */
  WholeLog until(LocalDate day) {
    Log then = log.until(day);
    return new WholeLog(then, Reckoner.reckon(then).facts());
  }
}
