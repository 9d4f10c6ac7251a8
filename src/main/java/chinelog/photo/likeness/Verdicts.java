package chinelog.photo.likeness;

import chinelog.digest.Sha256;
import chinelog.photo.Leftovers;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Remembers which photographs looked like withheld ones, for the very same photographs withheld and
 * open.
 */
final class Verdicts {

  private final Path file;

  Verdicts(Path folder, List<Photograph> closed, List<Photograph> open) {
    String key = Darkroom.key("likeness\n" + names(closed) + "\n\n" + names(open));
    this.file = folder.resolve(".chinelog").resolve("likeness").resolve(key);
  }

  private static String names(List<Photograph> photographs) {
    StringBuilder text = new StringBuilder();
    for (Photograph p : photographs) {
      text.append(p.sha256()).append(' ').append(p.taken()).append(' ').append(p.camera());
      text.append(' ').append(p.file().path()).append('\n');
    }
    return text.toString();
  }

  /**
   * @param withheld SHA-256 of the photograph that an open one looks like
   */
  record Verdict(String withheld, double degree) {}

  /** By path of the open photograph; null where nothing whole is remembered. */
  @Nullable SortedMap<String, Verdict> load() {
    try {
      String text = Files.readString(file);
      int body = text.lastIndexOf('\n') + 1;
      if (!text.substring(body).equals(sum(text.substring(0, body)))) {
        return null;
      }
      SortedMap<String, Verdict> verdicts = new TreeMap<>();
      for (String line : text.substring(0, body).lines().toList()) {
        String[] cells = line.split(" ", 3);
        verdicts.put(cells[2], new Verdict(cells[0], Double.parseDouble(cells[1])));
      }
      return verdicts;
    } catch (IOException | RuntimeException e) {
      // Absent or damaged: all the same to a cache.
      return null;
    }
  }

  void save(SortedMap<String, Verdict> verdicts) throws IOException {
    StringBuilder text = new StringBuilder();
    verdicts.forEach(
        (path, v) ->
            text.append(v.withheld)
                .append(' ')
                .append(v.degree)
                .append(' ')
                .append(path)
                .append('\n'));
    Files.createDirectories(file.getParent());
    Path fresh = Files.createTempFile(file.getParent(), "new", ".txt");
    Leftovers.clear(fresh, "new", ".txt");
    Files.writeString(fresh, text + sum(text.toString()));
    Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
  }

  private static String sum(String text) {
    return Sha256.of(text);
  }
}
