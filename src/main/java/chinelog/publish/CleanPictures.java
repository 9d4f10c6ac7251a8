package chinelog.publish;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Remembers, in the log's private cache, in which pictures audits found nothing, by their SHA-256:
 * the same bytes need not be decoded again when the next edition is published.
 */
final class CleanPictures {

  /** To be raised with every change to how the audit decodes pictures. */
  private static final String RULES = "1";

  private final Path file;
  private final SortedSet<String> hashes;

  private CleanPictures(Path file, SortedSet<String> hashes) {
    this.file = file;
    this.hashes = hashes;
  }

  static CleanPictures of(Path log) throws IOException {
    Path file = log.resolve(".chinelog").resolve("clean-pictures");
    // Garbage is no hash of anything, if only it can be read as text.
    List<String> lines =
        Files.isRegularFile(file) ? Files.readAllLines(file, ISO_8859_1) : List.of();
    boolean isOurs = !lines.isEmpty() && lines.get(0).equals(head());
    return new CleanPictures(
        file, new TreeSet<>(isOurs ? lines.subList(1, lines.size()) : List.of()));
  }

  private static String head() {
    return "rules " + RULES + ", Java " + Runtime.version();
  }

  Set<String> hashes() {
    return Collections.unmodifiableSet(hashes);
  }

  void addAll(Set<String> clean) throws IOException {
    if (hashes.addAll(clean)) {
      List<String> lines = new ArrayList<>(hashes);
      lines.add(0, head());
      Records.replace(file, lines);
    }
  }
}
