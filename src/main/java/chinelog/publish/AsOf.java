package chinelog.publish;

import chinelog.log.Log;
import java.time.LocalDate;

/** A log as it stood on a day. */
final class AsOf {

  private AsOf() {}

  /** The log without the entries dated after {@code day}. */
  static Log cut(Log log, LocalDate day) {
    if (log.entries().stream().noneMatch(e -> e.date().isAfter(day))) {
      return log;
    }
    return new Log(
        log.folder(),
        log.head(),
        log.stages(),
        log.agreements(),
        log.readers(),
        log.releases(),
        log.limits(),
        log.posts(),
        log.handover(),
        log.statements(),
        log.requests(),
        log.stock(),
        log.tables(),
        log.entries().stream().filter(e -> !e.date().isAfter(day)).toList(),
        log.photos(),
        log.sheets());
  }
}
