package chinelog.publish;

import chinelog.digest.Sha256;
import chinelog.photo.FileStamp;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Knows whether what stands published is as it was left, and whether the log would give the same
 * again, so that it need not be made and audited anew.
 *
 * <p>Remembered are two digests for each group of readers: of the stamps of all that an edition
 * comes from (the log's files, the ledgers, the program, its settings), and of the edition's own.
 * No file is opened. Whatever is in doubt counts as changed.
 */
final class Standing {

  private static final String IN_DOUBT = "in doubt";

  private final Path log;
  private final Shelf shelf;
  private final String settings;
  private final Stamps sources;
  private final boolean inDoubt;

  private Standing(Path log, Shelf shelf, String settings, Stamps sources, boolean inDoubt) {
    this.log = log;
    this.shelf = shelf;
    this.settings = settings;
    this.sources = sources;
    this.inDoubt = inDoubt;
  }

  /**
   * Looks at the files of a log, before they are read.
   *
   * @param settings whatever else an edition depends on, such as its day
   */
  static Standing before(Path log, Shelf shelf, String settings) throws IOException {
    Path now = Files.createTempFile(Files.createDirectories(memory(log)), "now", ".new");
    try {
      Stamps sources = new Stamps();
      sources.addAll(log, List.of("published", "records"));
      long sure = FileStamp.of(now).changedMillis() - FileStamp.UNSURE_MILLIS;
      boolean inDoubt = sources.isStrange() || sources.latestMillis() >= sure;
      return new Standing(log, shelf, settings + "\n" + Program.stamp(), sources, inDoubt);
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

  /** What has changed since the edition of some readers was put in its place. */
  Change since(String readers) throws IOException {
    Path file = memory(log).resolve(readers);
    List<String> kept = Files.isRegularFile(file) ? Files.readAllLines(file) : List.of();
    if (kept.size() != 2 || !kept.get(1).equals(edition(readers))) {
      return Change.EDITION;
    }
    return inDoubt || !kept.get(0).equals(source(readers)) ? Change.SOURCES : Change.NOTHING;
  }

  /** Remembers that the edition that stands was made from the files looked at. */
  void keep(String readers) throws IOException {
    Files.write(
        memory(log).resolve(readers),
        List.of(inDoubt ? IN_DOUBT : source(readers), edition(readers)));
  }

  private static Path memory(Path log) {
    return log.resolve(".chinelog").resolve("standing");
  }

  private String source(String readers) throws IOException {
    Stamps records = new Stamps();
    for (Path file : shelf.reliedOn(readers)) {
      records.add(log, file);
    }
    return Sha256.of(String.join("\n", settings, sources.text(), records.text()));
  }

  private String edition(String readers) throws IOException {
    Stamps stamps = new Stamps();
    stamps.addAll(shelf.published(readers), List.of());
    return Sha256.of(stamps.text());
  }
}
