package chinelog.publish;

import chinelog.digest.Sha256;
import chinelog.photo.FileStamp;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Knows whether what stands published is as it was left, and whether the log would give the same
 * again, so that it need not be made and audited anew.
 *
 * <p>Remembered are two digests for each group of readers: of the stamps of all that an edition
 * comes from (the log's files, the ledgers, the program, its settings), and of the edition's own.
 * Of what was written so shortly before that it might be written again without another stamp, the
 * content counts as well; else no file is opened. Whatever is in doubt counts as changed.
 */
final class Standing {

  private static final String IN_DOUBT = "in doubt";

  /**
   * Files that were all written just now, such as a log just copied, are not read for their own.
   */
  private static final long MOST_READ = 32L << 20;

  private final Path log;
  private final String settings;
  private final Stamps sources;
  private final List<String> young;
  private final @Nullable String youngContent;

  private Standing(Path log, String settings, Stamps sources, List<String> young)
      throws IOException {
    this.log = log;
    this.settings = settings;
    this.sources = sources;
    this.young = young;
    this.youngContent = content(young);
  }

  /**
   * Looks at the files of a log, before they are read.
   *
   * @param settings whatever else an edition depends on, such as its day
   */
  static Standing before(Path log, String settings) throws IOException {
    Path now = Files.createTempFile(Files.createDirectories(memory(log)), "now", ".new");
    try {
      Stamps sources = new Stamps();
      sources.addAll(log, Shelf.made(log));
      long sure = FileStamp.of(now).changedMillis() - FileStamp.UNSURE_MILLIS;
      String all = settings + "\n" + Program.stamp();
      return new Standing(log, all, sources, sources.changedSince(sure));
    } finally {
      Files.delete(now);
    }
  }

  /** What has changed since an edition was put in its place. */
  enum Change {
    NOTHING,
    /** What it comes from, or that is in doubt; it stands as it was left. */
    SOURCES,
    /** The edition itself, or that is in doubt. */
    EDITION
  }

  /**
   * What has changed since the edition of some readers was put in its place.
   *
   * @param shelf that knows where it stands
   */
  Change since(String readers, Shelf shelf) throws IOException {
    Path file = memory(log).resolve(readers);
    List<String> kept = Files.isRegularFile(file) ? Files.readAllLines(file) : List.of();
    if (kept.size() < 2 || !kept.get(1).equals(edition(readers, shelf))) {
      return Change.EDITION;
    }
    List<String> then = kept.subList(2, kept.size());
    String content = content(then);
    return sources.isStrange()
            || content == null
            || !kept.get(0).equals(source(readers, shelf, content))
        ? Change.SOURCES
        : Change.NOTHING;
  }

  /** Remembers that the edition that stands was made from the files looked at. */
  void keep(String readers, Shelf shelf) throws IOException {
    List<String> lines = new ArrayList<>();
    if (sources.isStrange() || youngContent == null) {
      lines.add(IN_DOUBT);
      lines.add(edition(readers, shelf));
    } else {
      lines.add(source(readers, shelf, youngContent));
      lines.add(edition(readers, shelf));
      lines.addAll(young);
    }
    Files.write(memory(log).resolve(readers), lines);
  }

  /** A digest of what files of the log hold; null where they are many or not to be named. */
  private @Nullable String content(List<String> files) throws IOException {
    StringBuilder all = new StringBuilder();
    long bytes = 0;
    for (String name : files) {
      Path file = log.resolve(name);
      if (name.chars().anyMatch(Character::isISOControl) || !Files.isRegularFile(file)) {
        return null;
      }
      bytes += Files.size(file);
      if (bytes > MOST_READ) {
        return null;
      }
      all.append(Sha256.of(Files.readAllBytes(file))).append('\n');
    }
    return Sha256.of(all.toString());
  }

  private static Path memory(Path log) {
    return log.resolve(".chinelog").resolve("standing");
  }

  private String source(String readers, Shelf shelf, String content) throws IOException {
    Stamps records = new Stamps();
    for (Path file : shelf.reliedOn(readers)) {
      records.add(log, file);
    }
    return Sha256.of(String.join("\n", settings, sources.text(), records.text(), content));
  }

  private String edition(String readers, Shelf shelf) throws IOException {
    Stamps stamps = new Stamps();
    stamps.addAll(shelf.published(readers), List.of());
    return Sha256.of(stamps.text());
  }
}
