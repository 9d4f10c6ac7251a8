package chinelog.photo.likeness;

import chinelog.digest.Sha256;
import chinelog.photo.Leftovers;
import chinelog.photo.derivatives.Darkroom;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Remembers what was seen in photographs, for the very same photographs and originals: a file of
 * lines, sealed by its SHA-256. There is one for each set of originals, with a line for each
 * photograph; and one for each photograph, with a line for each original, so that another original
 * is all that has to be searched for when one is added.
 */
final class KnownFindings {

  /** To be raised with every change that finds something else. */
  private static final String RECIPE = "recognition 3\n";

  private final Path file;
  private final SortedMap<String, Seen> seen;

  private KnownFindings(Path file, SortedMap<String, Seen> seen) {
    this.file = file;
    this.seen = seen;
  }

  /**
   * What was seen in one photograph.
   *
   * @param kind null for nothing
   */
  record Seen(
      Recognition.@Nullable Kind kind, String original, boolean mirrored, Recognition.Area area) {

    static final Seen NOTHING = new Seen(null, "", false, Recognition.Area.WHOLE);

    boolean isNothing() {
      return kind == null;
    }
  }

  /** What is known of a set of originals, by photograph. */
  static KnownFindings of(Darkroom darkroom, List<Original> originals) {
    return open(
        darkroom, originals.stream().map(Original::identity).collect(Collectors.joining("\n")));
  }

  /** What is known of a photograph, by original. */
  static KnownFindings of(Darkroom darkroom, Darkroom.Order order) {
    return open(darkroom, "in " + key(darkroom, order));
  }

  private static KnownFindings open(Darkroom darkroom, String name) {
    Path file =
        darkroom
            .folder()
            .resolve(".chinelog")
            .resolve("recognition")
            .resolve(Darkroom.key(RECIPE + name));
    return new KnownFindings(file, read(file));
  }

  /** A photograph as it is shown, as a line names it. */
  static String key(Darkroom darkroom, Darkroom.Order order) {
    return darkroom.key(order.photograph(), order.filled());
  }

  /** An original as a line names it. */
  static String key(Original original) {
    return Darkroom.key(original.identity());
  }

  /** Null for what is new. */
  @Nullable Seen find(String key) {
    return seen.get(key);
  }

  void addAll(Map<String, Seen> fresh) throws IOException {
    seen.putAll(fresh);
    StringBuilder text = new StringBuilder();
    seen.forEach((key, s) -> text.append(write(key, s)).append('\n'));
    Files.createDirectories(file.getParent());
    Path partial = Files.createTempFile(file.getParent(), "new", ".txt");
    Leftovers.clear(partial, "new", ".txt");
    Files.writeString(partial, text + sum(text.toString()));
    Files.move(partial, file, StandardCopyOption.REPLACE_EXISTING);
  }

  private static String write(String key, Seen s) {
    return String.join(
        "\t",
        key,
        s.kind == null ? "" : s.kind.name(),
        s.original.replace("\t", " ").replace("\n", " "),
        Boolean.toString(s.mirrored),
        Double.toString(s.area.left()),
        Double.toString(s.area.top()),
        Double.toString(s.area.right()),
        Double.toString(s.area.bottom()));
  }

  private static SortedMap<String, Seen> read(Path file) {
    SortedMap<String, Seen> seen = new TreeMap<>();
    try {
      String text = Files.readString(file);
      int body = text.lastIndexOf('\n') + 1;
      if (!text.substring(body).equals(sum(text.substring(0, body)))) {
        return seen;
      }
      for (String line : text.substring(0, body).lines().toList()) {
        String[] cells = line.split("\t", -1);
        Recognition.Area area =
            new Recognition.Area(
                Double.parseDouble(cells[4]),
                Double.parseDouble(cells[5]),
                Double.parseDouble(cells[6]),
                Double.parseDouble(cells[7]));
        seen.put(
            cells[0],
            new Seen(
                cells[1].isEmpty() ? null : Recognition.Kind.valueOf(cells[1]),
                cells[2],
                Boolean.parseBoolean(cells[3]),
                area));
      }
      return seen;
    } catch (IOException | RuntimeException e) {
      // Absent or damaged: all the same to a cache.
      return new TreeMap<>();
    }
  }

  private static String sum(String text) {
    return Sha256.of(text);
  }
}
