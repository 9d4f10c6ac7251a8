package chinelog.log.reading;

import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * The files of a log by what they are for, each under its path below the folder, with '/' between
 * its parts.
 *
 * @param settings log.yaml, facts.yaml, stock.yaml, answers.yaml, as far as they are there
 * @param remarks every photos.yaml
 */
public record Inventory(
    Path folder,
    SortedMap<String, Path> settings,
    SortedMap<String, Path> entries,
    SortedMap<String, Path> photos,
    SortedMap<String, Path> remarks,
    SortedMap<String, Path> sheets,
    SortedMap<String, Path> tables) {

  static final List<String> PHOTO_ENDINGS =
      List.of("jpg", "jpeg", "png", "tif", "tiff", "webp", "gif", "heic");

  public boolean isLoose() {
    return !settings.containsKey("log.yaml");
  }

  /** The entries' ids. */
  public SortedSet<String> entryIds() {
    SortedSet<String> ids = new TreeSet<>();
    entries.keySet().forEach(path -> ids.add(entryId(path)));
    return ids;
  }

  public String entryId(String path) {
    String below = path.startsWith("entries/") ? path.substring("entries/".length()) : path;
    return below.substring(0, below.length() - ".md".length());
  }
}
