package chinelog.photo.likeness;

import chinelog.digest.Sha256;
import chinelog.photo.Leftovers;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Remembers of each open photograph which of the very same withheld ones it looked like, if any: so
 * that one photograph more is the only one to be compared.
 */
final class Verdicts {

  private static final String NONE = "-";

  private final Path file;

  Verdicts(Path folder, List<Photograph> closed) {
    StringBuilder names = new StringBuilder("likeness of each\n");
    closed.forEach(p -> names.append(name(p)).append('\n'));
    this.file =
        folder.resolve(".chinelog").resolve("likeness").resolve(Darkroom.key(names.toString()));
  }

  /**
   * @param withheld SHA-256 of the photograph that an open one looks like
   */
  record Verdict(String withheld, double degree) {}

  /** What a verdict on a photograph is remembered by: all of it that decides one. */
  static String key(Photograph p) {
    return Sha256.of(name(p));
  }

  private static String name(Photograph p) {
    return p.sha256() + " " + p.taken() + " " + p.camera() + " " + p.file().path();
  }

  /** By key of the open photograph; empty where nothing whole is remembered. */
  Map<String, Optional<Verdict>> load() {
    try {
      String text = Files.readString(file);
      int body = text.lastIndexOf('\n') + 1;
      if (!text.substring(body).equals(Sha256.of(text.substring(0, body)))) {
        return Map.of();
      }
      Map<String, Optional<Verdict>> verdicts = new HashMap<>();
      for (String line : text.substring(0, body).lines().toList()) {
        String[] cells = line.split(" ");
        verdicts.put(
            cells[0],
            cells[1].equals(NONE)
                ? Optional.empty()
                : Optional.of(new Verdict(cells[1], Double.parseDouble(cells[2]))));
      }
      return verdicts;
    } catch (IOException | RuntimeException e) {
      // Absent or damaged: all the same to a cache.
      return Map.of();
    }
  }

  void save(Map<String, Optional<Verdict>> verdicts) throws IOException {
    StringBuilder text = new StringBuilder();
    new TreeMap<>(verdicts)
        .forEach(
            (key, verdict) ->
                text.append(key)
                    .append(' ')
                    .append(verdict.map(v -> v.withheld + " " + v.degree).orElse(NONE))
                    .append('\n'));
    Files.createDirectories(file.getParent());
    Path fresh = Files.createTempFile(file.getParent(), "new", ".txt");
    Leftovers.clear(fresh, "new", ".txt");
    Files.writeString(fresh, text + Sha256.of(text.toString()));
    Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
  }
}
