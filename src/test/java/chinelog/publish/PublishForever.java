package chinelog.publish;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.locks.LockSupport;

/**
 * A Java of its own that publishes a log over and over, by turns as of two days, until it is killed
 * or a file comes into being: then it stops dead, as at a power cut.
 */
final class PublishForever {

  /** Much less than what it waits for stays. */
  private static final long LOOK_NANOS = 50_000;

  private PublishForever() {}

  /** Arguments: the log, and what to stop dead at, or "-" for nothing. */
  public static void main(String[] args) throws Exception {
    Path log = Path.of(args[0]);
    if (!args[1].equals("-")) {
      Thread watch = new Thread(() -> stopDead(log.resolve(args[1])));
      watch.setDaemon(true);
      watch.start();
    }
    while (true) {
      publish(log, 0);
      publish(log, 1);
    }
  }

  private static void stopDead(Path moment) {
    while (!Files.exists(moment)) {
      LockSupport.parkNanos(LOOK_NANOS);
    }
    Runtime.getRuntime().halt(9);
  }

  static Outcome publish(Path log, int turn) throws java.io.IOException {
    LocalDate day = ByteTwinsTest.AS_OF.plusDays(turn);
    return new Publisher(log, day, day, ZoneId.of("UTC"), Progress.SILENT)
        .publish(List.of("public"));
  }
}
