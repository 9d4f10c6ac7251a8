package chinelog.publish;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;

/**
 * When and where a log is published.
 *
 * @param folder the log's
 * @param today the real date
 * @param asOf the day for which editions are made
 * @param zone for a log that names none
 */
record Occasion(Path folder, LocalDate today, LocalDate asOf, ZoneId zone) {

  Workshop.Opened open(Progress progress) throws IOException {
    return Workshop.open(folder, today, asOf, zone, progress);
  }

  /** What an edition depends on besides files. */
  String settings() {
    return asOf + " " + zone;
  }
}
