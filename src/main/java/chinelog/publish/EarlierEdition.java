package chinelog.publish;

import chinelog.digest.ContentHash;
import chinelog.site.Earlier;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The edition of some readers that stands published, whose files go into the next one as they are
 * where they would be made of the very same.
 *
 * <p>What each file was made of is remembered, as a digest, in the log's private cache. It is made
 * of what the edition holds, of the program, the theme and the templates, and of nothing else, so
 * that nothing withheld decides whether a file is made again. Without the cache, or where somebody
 * changed the edition, all files are made.
 */
final class EarlierEdition {

  private static final String HEAD = "made 1";
  private static final char SEPARATOR = '\t';

  private final Path remembered;
  private final Path published;
  private final Path making;
  private final FileTime day;
  private final ContentHash hashes;
  private final Manifest manifest;
  private final SortedMap<String, String> before;
  private final SortedMap<String, String> now = new TreeMap<>();
  private final SortedMap<String, String> kept = new TreeMap<>();

  private EarlierEdition(
      Path remembered,
      Path published,
      Path making,
      FileTime day,
      ContentHash hashes,
      Manifest manifest,
      SortedMap<String, String> before) {
    this.remembered = remembered;
    this.published = published;
    this.making = making;
    this.day = day;
    this.hashes = hashes;
    this.manifest = manifest;
    this.before = before;
  }

  /**
   * The edition that stands.
   *
   * @param asItWasLeft whether it certainly is
   * @param making where the next one is made
   * @param day the time of all files of the next one
   */
  static EarlierEdition of(
      Path log,
      Shelf shelf,
      String readers,
      boolean asItWasLeft,
      Path making,
      FileTime day,
      ContentHash hashes)
      throws IOException {
    Path remembered = log.resolve(".chinelog").resolve("made").resolve(readers);
    return new EarlierEdition(
        remembered,
        shelf.published(readers),
        making,
        day,
        hashes,
        Manifest.read(shelf.manifest(readers)),
        asItWasLeft ? read(remembered) : new TreeMap<>());
  }

  private static SortedMap<String, String> read(Path file) throws IOException {
    SortedMap<String, String> made = new TreeMap<>();
    List<String> lines = CacheLines.read(file);
    if (!lines.isEmpty() && lines.get(0).equals(HEAD)) {
      for (String line : lines.subList(1, lines.size())) {
        int cut = line.indexOf(SEPARATOR);
        made.put(line.substring(0, cut), line.substring(cut + 1));
      }
    }
    return made;
  }

  ContentHash hashes() {
    return hashes;
  }

  /** Whether a file, noted now as made of this, was made of the same before and was left as is. */
  boolean keep(String name, String made) {
    now.put(name, made);
    return made.equals(before.get(name)) && take(name);
  }

  /** The same for all that a folder holds. */
  boolean keepFolder(String folder, String made) {
    String name = folder + "/";
    now.put(name, made);
    if (!made.equals(before.get(name))) {
      return false;
    }
    List<String> files =
        manifest.files().keySet().stream().filter(f -> f.startsWith(name)).toList();
    if (files.stream().allMatch(f -> Files.isRegularFile(published.resolve(f)))
        && files.stream().allMatch(this::take)) {
      return true;
    }
    files.forEach(kept::remove);
    return false;
  }

  private boolean take(String name) {
    String sha256 = manifest.files().get(name);
    if (sha256 == null) {
      return false;
    }
    Path from = published.resolve(name);
    Path to = making.resolve(name);
    try {
      Files.createDirectories(to.getParent());
      place(from, to);
      kept.put(name, sha256);
      return true;
    } catch (IOException e) {
      // It is made again, then.
      return false;
    }
  }

  /** The same file under a second name, or a copy where that cannot be, or is of another day. */
  private void place(Path from, Path to) throws IOException {
    if (Files.getLastModifiedTime(from).equals(day)) {
      try {
        Files.createLink(to, from);
        return;
      } catch (IOException | UnsupportedOperationException e) {
        // Not every file system can.
      }
    }
    Files.copy(from, to);
  }

  /** The SHA-256 of each file that went into the next edition as it stood, by name. */
  SortedMap<String, String> kept() {
    return kept;
  }

  /** Remembers, once the next edition stands, what its files were made of. */
  void remember() throws IOException {
    List<String> lines = new ArrayList<>(List.of(HEAD));
    now.forEach((name, made) -> lines.add(name + SEPARATOR + made));
    CacheLines.write(remembered, lines);
  }

  /** As the site is told of it. */
  Earlier site() {
    return new Site();
  }

  private final class Site implements Earlier {
    private static final String FOLDER = "site/";

    @Override
    public @Nullable String find(String path) {
      return before.get(FOLDER + path);
    }

    @Override
    public boolean keep(String path) {
      return take(FOLDER + path);
    }

    @Override
    public void note(String path, String made) {
      now.put(FOLDER + path, made);
    }

    @Override
    public ContentHash hashes() {
      return hashes;
    }
  }
}
