package chinelog.photo.gathering;

import chinelog.digest.Sha256;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Stream;

/**
 * Writes down what was brought in from where, in {@code records/gathered.csv}: one line as soon as
 * a file is in its place.
 *
 * <p>The line is set aside before the file is placed, so that a run that is killed between the two
 * loses nothing: the next one writes the line if the file came to its place, and forgets it if not.
 */
final class GatheredList {

  private static final String HEADING = "day,source,path,sha256,camera,taken\n";
  private static final String ASIDE = ".line";

  private final Path log;
  private final Path file;
  private final Path aside;

  /** Makes up for what a run that was cut short did not write. */
  GatheredList(Path log) throws IOException {
    this.log = log;
    this.file = log.resolve("records").resolve("gathered.csv");
    this.aside = log.resolve(".chinelog").resolve("gather");
    for (Path left : left()) {
      String[] parts = Files.readString(left).split("\n", 2);
      boolean whole = parts.length == 2 && parts[1].endsWith("\n");
      mend(whole && isPlaced(left, parts[0]) ? parts[1] : "");
      Files.delete(left);
    }
    mend("");
  }

  /** Sees that a line is there once, and whole; and that the last one is ended. */
  private void mend(String line) throws IOException {
    String text = Files.isRegularFile(file) ? Files.readString(file) : "";
    String begun = text.substring(text.lastIndexOf('\n') + 1);
    if (!line.isEmpty() && !begun.isEmpty() && line.startsWith(begun)) {
      append(line.substring(begun.length()));
    } else {
      append((begun.isEmpty() ? "" : "\n") + (text.contains("\n" + line) ? "" : line));
    }
  }

  private List<Path> left() throws IOException {
    if (!Files.isDirectory(aside)) {
      return List.of();
    }
    try (Stream<Path> found = Files.list(aside)) {
      return found.filter(p -> p.toString().endsWith(ASIDE)).sorted().toList();
    }
  }

  private boolean isPlaced(Path left, String path) throws IOException {
    Path placed = log.resolve(path);
    return Files.isRegularFile(placed)
        && left.equals(asideFor(Sha256.of(Files.readAllBytes(placed))));
  }

  private Path asideFor(String sha256) {
    return aside.resolve(sha256 + ASIDE);
  }

  /**
   * Sets a line aside for a file about to be placed.
   *
   * @param cells as the heading names them, all quoted but the first
   */
  void begin(String path, String sha256, List<String> cells) throws IOException {
    StringBuilder line = new StringBuilder(cells.get(0));
    for (String cell : cells.subList(1, cells.size())) {
      line.append(",\"").append(cell.replace("\"", "\"\"")).append('"');
    }
    Files.createDirectories(aside);
    Files.writeString(asideFor(sha256), path + "\n" + line + "\n");
  }

  /** Writes the line that was set aside, now that its file is in its place. */
  void finish(String sha256) throws IOException {
    Path left = asideFor(sha256);
    append(Files.readString(left).split("\n", 2)[1]);
    Files.delete(left);
  }

  private void append(String text) throws IOException {
    if (!text.isEmpty()) {
      Files.createDirectories(file.getParent());
      Files.writeString(
          file,
          Files.exists(file) ? text : HEADING + text,
          StandardOpenOption.CREATE,
          StandardOpenOption.APPEND);
    }
  }
}
