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

  /** Sets the time of a folder and of everything below it to the beginning of a day, UTC. */
  static void set(Path folder, LocalDate day) throws IOException {
    FileTime time = FileTime.from(day.atStartOfDay().toInstant(ZoneOffset.UTC));
    List<Path> all;
    try (Stream<Path> walk = Files.walk(folder)) {
      all = walk.toList();
    }
    for (int i = all.size() - 1; i >= 0; i--) {
      Files.setLastModifiedTime(all.get(i), time);
    }
  }
}
