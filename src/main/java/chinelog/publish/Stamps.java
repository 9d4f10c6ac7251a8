package chinelog.publish;

import chinelog.photo.FileStamp;
import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** The stamps of many files, by name. */
final class Stamps {

  private final SortedMap<String, String> byName = new TreeMap<>();
  private final SortedMap<String, Long> changedMillis = new TreeMap<>();
  private final SortedSet<String> folders = new TreeSet<>();
  private boolean strange;

  /** Adds one file, or all below a folder but some of its own, and but hidden folders. */
  void addAll(Path folder, List<String> except) throws IOException {
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path inside, BasicFileAttributes attributes) {
            String name = folder.relativize(inside).toString().replace('\\', '/');
            if (except.contains(name) || name.matches("(.*[/\\\\])?\\.[^/\\\\]*")) {
              return FileVisitResult.SKIP_SUBTREE;
            }
            folders.add(name);
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            strange |= !attributes.isRegularFile();
            add(folder, file);
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFileFailed(Path file, IOException e) {
            strange = true;
            return FileVisitResult.CONTINUE;
          }
        });
  }

  void add(Path folder, Path file) throws IOException {
    FileStamp stamp = FileStamp.of(file);
    String name = folder.relativize(file).toString();
    changedMillis.put(name, stamp.changedMillis());
    byName.put(name, stamp.text());
  }

  /**
   * Names of the files that changed at a time or later.
   *
   * @param millis by the clock of their file system, since 1970
   */
  List<String> changedSince(long millis) {
    return changedMillis.entrySet().stream()
        .filter(file -> file.getValue() >= millis)
        .map(Map.Entry::getKey)
        .toList();
  }

  /** Whether there was something that is no file, or that could not be looked at. */
  boolean isStrange() {
    return strange;
  }

  /** Names of the folders gone through, one to a line. */
  String folders() {
    return String.join("\n", folders);
  }

  String text() {
    StringBuilder text = new StringBuilder();
    byName.forEach((name, stamp) -> text.append(name).append('\t').append(stamp).append('\n'));
    return text.toString();
  }
}
