package chinelog.publish;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.Stream;

/** Gives what is published one time, that of its day, so that file times tell nothing. */
final class FileTimes {

  private FileTimes() {}

  /** The beginning of a day, UTC. */
  static FileTime of(LocalDate day) {
    return FileTime.from(day.atStartOfDay().toInstant(ZoneOffset.UTC));
  }

  /** Sets the time of a folder and of everything below it to the beginning of a day, UTC. */
  static void set(Path folder, LocalDate day) throws IOException {
    FileTime time = of(day);
    List<Path> all;
    try (Stream<Path> walk = Files.walk(folder)) {
      all = walk.toList();
    }
    for (int i = all.size() - 1; i >= 0; i--) {
      Path path = all.get(i);
      // A file that stands published may have a second name here: it has its time already.
      if (!Files.getLastModifiedTime(path).equals(time)) {
        Files.setLastModifiedTime(path, time);
      }
    }
  }
}
