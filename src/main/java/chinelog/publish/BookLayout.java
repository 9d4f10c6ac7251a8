package chinelog.publish;

import chinelog.digest.Sha256;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Remembers, in the log's private cache, how a book of some readers was laid out. */
record BookLayout(Path file, String made) {

  /**
   * Of one book.
   *
   * @param name of the book among those of all readers
   * @param settings by which it is laid out: what was kept for others counts for nothing
   */
  static BookLayout of(Path log, String name, List<Object> settings) {
    return new BookLayout(
        log.resolve(".chinelog").resolve("layouts").resolve(name), Sha256.of(settings.toString()));
  }

  /** What was kept last; empty for nothing. */
  List<String> find() throws IOException {
    List<String> lines = CacheLines.read(file);
    return !lines.isEmpty() && lines.get(0).equals(made)
        ? lines.subList(1, lines.size())
        : List.of();
  }

  void keep(List<String> lines) throws IOException {
    List<String> all = new ArrayList<>(lines);
    all.add(0, made);
    CacheLines.write(file, all);
  }
}
