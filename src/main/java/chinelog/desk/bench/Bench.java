package chinelog.desk.bench;

import chinelog.desk.files.LogFiles;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;

/**
 * What every page works with.
 *
 * @param folder the log's
 * @param log that lies in it, kept read
 * @param files that make it up, to be changed
 * @param frame that pages are put into
 */
public record Bench(Path folder, LiveLog log, LogFiles files, Frame frame, Clock clock) {

  public LocalDate today() {
    return LocalDate.ofInstant(clock.instant(), clock.getZone());
  }
}
