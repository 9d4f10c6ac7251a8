package chinelog.publish;

import chinelog.digest.Sha256;
import chinelog.photo.FileStamp;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What files of a log, the program, and its settings were at a moment, so that a later look tells
 * whether any of it has changed. Of what was written so shortly before that it might be written
 * again without another stamp, the content counts as well; else no file is opened.
 */
final class LogState {

  /**
   * Files that were all written just now, such as a log just copied, are not read for their own.
   */
  private static final long MOST_READ = 32L << 20;

  private final Path log;
  private final String text;
  private final List<String> young;
  private final @Nullable String youngContent;
  private final Map<List<String>, @Nullable String> contents = new HashMap<>();

  private LogState(Path log, String text, boolean strange, List<String> young) throws IOException {
    this.log = log;
    this.text = text;
    this.young = young;
    this.youngContent = strange ? null : content(young);
  }

  /**
   * Looks at the files that an edition is made from.
   *
   * @param settings whatever else is made from, such as the day of an edition
   */
  static LogState atSources(Path log, String settings) throws IOException {
    return at(log, Shelf.made(log), false, settings);
  }

  /** Looks at all that a log holds, with what was made of it and the names of its folders. */
  static LogState atAll(Path log, String settings) throws IOException {
    return at(log, List.of(), true, settings);
  }

  private static LogState at(Path log, List<String> except, boolean folders, String settings)
      throws IOException {
    Path now = Files.createTempFile(Files.createDirectories(cache(log)), "now", ".new");
    try {
      Stamps stamps = new Stamps();
      stamps.addAll(log, except);
      long sure = FileStamp.of(now).changedMillis() - FileStamp.UNSURE_MILLIS;
      String text = String.join("\n", settings, Program.stamp(), stamps.text());
      return new LogState(
          log,
          folders ? text + stamps.folders() : text,
          stamps.isStrange(),
          stamps.changedSince(sure));
    } finally {
      Files.delete(now);
    }
  }

  /** Where what is known of a look may be kept. */
  static Path cache(Path log) {
    return log.resolve(".chinelog").resolve("standing");
  }

  /** Whether nothing was in doubt. */
  boolean isCertain() {
    return youngContent != null;
  }

  /** The files whose content counts. */
  List<String> young() {
    return young;
  }

  /** A digest of all that was looked at but what files hold. */
  String stamps() {
    return Sha256.of(text);
  }

  /** A digest of what the young files hold; null if that was in doubt. */
  @Nullable String content() {
    return youngContent;
  }

  /** The same of the files that were young at an earlier look. */
  @Nullable String contentOf(List<String> earlier) throws IOException {
    if (!isCertain() || earlier.equals(young)) {
      return youngContent;
    }
    if (!contents.containsKey(earlier)) {
      contents.put(earlier, content(earlier));
    }
    return contents.get(earlier);
  }

  /** A digest of what files of the log hold; null where they are many or not to be named. */
  private @Nullable String content(List<String> files) throws IOException {
    StringBuilder all = new StringBuilder();
    long bytes = 0;
    for (String name : files) {
      Path file = log.resolve(name);
      if (name.chars().anyMatch(Character::isISOControl) || !Files.isRegularFile(file)) {
        return null;
      }
      bytes += Files.size(file);
      if (bytes > MOST_READ) {
        return null;
      }
      all.append(Sha256.of(Files.readAllBytes(file))).append('\n');
    }
    return Sha256.of(all.toString());
  }
}
