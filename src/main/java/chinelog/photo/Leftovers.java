package chinelog.photo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Deletes half-written files that an earlier run, which was killed, has left in the cache. */
public final class Leftovers {

  /** Younger ones may belong to a run that is still at work. */
  private static final Duration OLD = Duration.ofHours(1);

  private Leftovers() {}

  /**
   * Deletes what has the beginning and ending of {@code fresh}, lies beside it and is much older;
   * the time is that of {@code fresh} itself, which was just made.
   */
  public static void clear(Path fresh, String beginning, String ending) throws IOException {
    Instant now = Files.getLastModifiedTime(fresh).toInstant();
    for (Path path : beside(fresh)) {
      String name = path.getFileName().toString();
      if (name.startsWith(beginning) && name.endsWith(ending) && isOld(path, now)) {
        delete(path);
      }
    }
  }

  private static List<Path> beside(Path fresh) throws IOException {
    try (Stream<Path> found = Files.list(fresh.toAbsolutePath().getParent())) {
      return found.sorted().toList();
    }
  }

  private static boolean isOld(Path path, Instant now) throws IOException {
    try {
      return Files.getLastModifiedTime(path).toInstant().isBefore(now.minus(OLD));
    } catch (NoSuchFileException e) {
      // Its run has put it into its place meanwhile.
      return false;
    }
  }

  /** A file, or a folder with all it holds. */
  public static void delete(Path path) throws IOException {
    try (Stream<Path> found = Files.walk(path)) {
      for (Path one : found.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(one);
      }
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }
}
