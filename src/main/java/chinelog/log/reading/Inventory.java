package chinelog.log.reading;

import chinelog.log.records.Entry;
import chinelog.problem.Problems;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * The files of a log by what they are for, each under its path below the folder, with '/' between
 * its parts.
 *
 * @param settings log.yaml, facts.yaml, stock.yaml, answers.yaml, hours.csv, as far as they are
 *     there
 * @param remarks every photos.yaml
 * @param marks of recordings, one file each
 * @param unsaved texts that stand in for those of the files, by path
 */
public record Inventory(
    Path folder,
    SortedMap<String, Path> settings,
    SortedMap<String, Path> entries,
    SortedMap<String, Path> photos,
    SortedMap<String, Path> remarks,
    SortedMap<String, Path> sheets,
    SortedMap<String, Path> tables,
    SortedMap<String, Path> marks,
    SortedMap<String, String> unsaved) {

  static final List<String> PHOTO_ENDINGS =
      List.of("jpg", "jpeg", "png", "tif", "tiff", "webp", "gif", "heic");

  public boolean isLoose() {
    return !settings.containsKey("log.yaml");
  }

  /** Without a file. */
  public static Inventory empty(Path folder) {
    SortedMap<String, Path> none = Collections.emptySortedMap();
    return new Inventory(
        folder, none, none, none, none, none, none, none, Collections.emptySortedMap());
  }

  /** The same with other texts, some of which may be notes or settings that are no files yet. */
  public Inventory with(SortedMap<String, String> texts) {
    SortedMap<String, Path> notes = new TreeMap<>(entries);
    SortedMap<String, Path> known = new TreeMap<>(settings);
    for (String path : texts.keySet()) {
      if (path.startsWith("entries/") && Entry.isNoteFile(path)) {
        notes.putIfAbsent(path, folder.resolve(path));
      } else if (FolderWalk.SETTINGS.contains(path)) {
        known.putIfAbsent(path, folder.resolve(path));
      }
    }
    return new Inventory(folder, known, notes, photos, remarks, sheets, tables, marks, texts);
  }

  /** A file's text, or null after the problem was noted. */
  public @Nullable Source read(Path file, String name, Problems problems) {
    String text = unsaved.get(name);
    return text == null
        ? SourceFile.read(file, name, problems)
        : SourceFile.read(text.getBytes(StandardCharsets.UTF_8), name, problems);
  }

  /** The entries' ids. */
  public SortedSet<String> entryIds() {
    SortedSet<String> ids = new TreeSet<>();
    entries.keySet().forEach(path -> ids.add(entryId(path)));
    return ids;
  }

  public String entryId(String path) {
    String below = path.startsWith("entries/") ? path.substring("entries/".length()) : path;
    return Entry.withoutEnding(below);
  }
}
