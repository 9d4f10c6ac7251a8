package chinelog.publish;

import chinelog.digest.Sha256;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Lines kept in a log's private cache, with their SHA-256 as the last line; a file that does not
 * match its SHA-256 is treated as absent.
 */
final class CacheLines {

  private CacheLines() {}

  /** The lines kept in a file; none if it is not there, or not as it was written. */
  static List<String> read(Path file) throws IOException {
    if (!Files.isRegularFile(file)) {
      return List.of();
    }
    List<String> lines;
    try {
      lines = Files.readAllLines(file);
    } catch (CharacterCodingException e) {
      return List.of();
    }
    int body = lines.size() - 1;
    return body > 0 && sum(lines.subList(0, body)).equals(lines.get(body))
        ? lines.subList(0, body)
        : List.of();
  }

  /**
   * Keeps lines in a file, in the place of those that it held.
   *
   * @param lines without line breaks in them
   */
  static void write(Path file, List<String> lines) throws IOException {
    List<String> all = new ArrayList<>(lines);
    all.add(sum(lines));
    Files.createDirectories(file.getParent());
    Records.replace(file, all);
  }

  private static String sum(List<String> lines) {
    return Sha256.of(String.join("\n", lines));
  }
}
