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
  private final Sources sources;

  /**
   * The files of a log.
   *
   * @param inDoubt whether one of them may change yet without its stamp telling
   */
  record Sources(Stamps stamps, boolean inDoubt) {}

  /**
   * @param settings whatever else an edition depends on, such as its day
   * @param sources as they were before they were read
   */
  Standing(Path log, Shelf shelf, String settings, Sources sources) throws IOException {
    this.log = log;
    this.shelf = shelf;
    this.settings = settings + "\n" + Program.stamp();
    this.sources = sources;
  }

  /** Looks at the files of a log, before they are read. */
  static Sources look(Path log) throws IOException {
    Path now = Files.createTempFile(Files.createDirectories(memory(log)), "now", ".new");
    try {
      Stamps stamps = new Stamps();
      stamps.addAll(log, Shelf.made(log));
      long sure = FileStamp.of(now).changedMillis() - FileStamp.UNSURE_MILLIS;
      return new Sources(stamps, stamps.isStrange() || stamps.latestMillis() >= sure);
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
    return sources.inDoubt() || !kept.get(0).equals(source(readers)) ? Change.SOURCES : Change.NOTHING;
  }

  /** Remembers that the edition that stands was made from the files looked at. */
  void keep(String readers) throws IOException {
    Files.write(
        memory(log).resolve(readers),
        List.of(sources.inDoubt() ? IN_DOUBT : source(readers), edition(readers)));
  }

  private static Path memory(Path log) {
    return log.resolve(".chinelog").resolve("standing");
  }

  private String source(String readers) throws IOException {
    Stamps records = new Stamps();
    for (Path file : shelf.reliedOn(readers)) {
      records.add(log, file);
    }
    return Sha256.of(String.join("\n", settings, sources.stamps().text(), records.text()));
  }

  private String edition(String readers) throws IOException {
    Stamps stamps = new Stamps();
    stamps.addAll(shelf.published(readers), List.of());
    return Sha256.of(stamps.text());
  }
}
