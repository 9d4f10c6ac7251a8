package chinelog.log;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Lays down a new log that teaches how to write one. */
public final class NewLog {

  /** Where remarks begin in the first lines of log.yaml. */
  private static final int REMARKS_AT = 36;

  private static final List<String> FIRST_NOTE = resource("entries/first.md").lines().toList();

  private NewLog() {}

  /**
   * What is known of a build when its log is begun.
   *
   * @param name of what is modelled; empty if not known
   * @param scale as written in log.yaml, such as 1:16; empty if not known
   */
  public record Beginning(String name, String scale) {

    /** Nothing but the folder. */
    public static final Beginning UNKNOWN = new Beginning("", "");
  }

  /** What a maker writes for a scale as log.yaml has it: 16 is 1:16; empty for what is none. */
  public static Optional<String> scale(String written) {
    String text = written.strip();
    String whole = text.matches("[0-9]+([.][0-9]+)?") ? "1:" + text : text;
    return HeadReader.isScale(whole) ? Optional.of(whole) : Optional.empty();
  }

  /**
   * Writes log.yaml, facts.yaml, stock.yaml, quotation.yaml, photos.yaml, an empty table of
   * offsets, a first entry of today, and the folders photos and sheets, all of which read without
   * an error. Between them they show every key there is, most of them as remarks.
   *
   * @param folder made if it is not there
   * @throws FileAlreadyExistsException if it is a file
   * @throws DirectoryNotEmptyException if anything is in it; nothing is written then
   * @throws IOException if it cannot be written
   */
  public static void layDown(Path folder, LocalDate today, Beginning beginning) throws IOException {
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new FileAlreadyExistsException(folder.toString());
    }
    Files.createDirectories(folder);
    if (findAnything(folder).isPresent()) {
      throw new DirectoryNotEmptyException(folder.toString());
    }
    for (String part : new String[] {"entries", "photos", "sheets", "tables"}) {
      Files.createDirectory(folder.resolve(part));
    }
    Map<String, String> files = new LinkedHashMap<>();
    files.put("log.yaml", "log.yaml");
    files.put("facts.yaml", "facts.yaml");
    files.put("stock.yaml", "stock.yaml");
    files.put("quotation.yaml", "quotation.yaml");
    files.put("tables/offsets.csv", "tables/offsets.csv");
    files.put("photos/photos.yaml", "photos/photos.yaml");
    files.put("entries/first.md", "entries/" + today + "-the-log-is-begun.md");
    for (Map.Entry<String, String> file : files.entrySet()) {
      String text = resource(file.getKey());
      String name = String.valueOf(folder.toAbsolutePath().normalize().getFileName());
      Files.writeString(
          folder.resolve(file.getValue()),
          file.getKey().equals("log.yaml") ? begun(text, beginning, name) : text);
    }
  }

  /** Whether a note still reads as it was laid down: it tells its maker something, not readers. */
  static boolean isFirstNote(String text) {
    return text.lines().toList().equals(FIRST_NOTE);
  }

  private static String resource(String name) {
    try (InputStream in = NewLog.class.getResourceAsStream("/chinelog/new-log/" + name)) {
      if (in == null) {
        throw new IllegalStateException("the resource " + name + " is missing");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** log.yaml for this build and no other. */
  private static String begun(String text, Beginning beginning, String folder) {
    String name = beginning.name().strip();
    String title = name.isEmpty() ? LogReader.title(folder) : "Building " + name;
    String titled = with(text, "title", title);
    String named = name.isEmpty() ? remark(titled, "subject") : with(titled, "subject", name);
    return beginning.scale().isEmpty()
        ? remark(named, "scale")
        : with(named, "scale", beginning.scale());
  }

  private static String with(String text, String key, String value) {
    boolean plain =
        value.matches("[\\p{L}\\p{N}][\\p{L}\\p{M}\\p{N} .’,'():/=-]*") && !value.contains(": ");
    String written = plain ? value : '"' + value.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    String line = key + ": " + written;
    return Pattern.compile("(?m)^" + key + ": (?:.*?)( *#.*)?$")
        .matcher(text)
        .replaceFirst(m -> Matcher.quoteReplacement(padded(line) + remarkOf(m.group(1))));
  }

  private static String remarkOf(@Nullable String remark) {
    return remark == null ? "" : remark.strip();
  }

  private static String padded(String line) {
    return line.length() < REMARKS_AT ? line + " ".repeat(REMARKS_AT - line.length()) : line + " ";
  }

  private static String remark(String text, String key) {
    return text.replaceFirst("(?m)^" + key + ": ", "# " + key + ": ");
  }

  private static Optional<Path> findAnything(Path folder) throws IOException {
    try (Stream<Path> children = Files.list(folder)) {
      return children.findAny();
    }
  }
}
