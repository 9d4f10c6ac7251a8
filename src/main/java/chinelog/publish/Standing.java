package chinelog.publish;

import chinelog.digest.Sha256;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Knows whether what stands published is as it was left, and whether the log would give the same
 * again, so that it need not be made and audited anew.
 *
 * <p>Remembered are three digests for each group of readers: of the stamps of a {@link LogState} at
 * all that an edition comes from (the log's files, the ledgers, the program, its settings), of what
 * its young files held, and of the stamps of the edition's own files. Whatever is in doubt counts
 * as changed.
 *
 * @param sources what was looked at
 */
record Standing(Path log, LogState sources) {

  private static final String IN_DOUBT = "in doubt";

  /** Lines before the names of the young files. */
  private static final int HEAD = 3;

  /**
   * Looks at the files of a log, before they are read.
   *
   * @param settings whatever else an edition depends on, such as its day
   */
  static Standing before(Path log, String settings) throws IOException {
    return new Standing(log, LogState.atSources(log, settings));
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
    Path file = LogState.cache(log).resolve(readers);
    List<String> kept = Files.isRegularFile(file) ? Files.readAllLines(file) : List.of();
    if (kept.size() < HEAD || !kept.get(1).equals(edition(readers, shelf))) {
      return Change.EDITION;
    }
    return kept.get(0).equals(source(readers, shelf))
            && kept.get(2).equals(sources.contentOf(kept.subList(HEAD, kept.size())))
        ? Change.NOTHING
        : Change.SOURCES;
  }

  /** Remembers that the edition that stands was made from the files looked at. */
  void keep(String readers, Shelf shelf) throws IOException {
    List<String> lines = new ArrayList<>();
    String young = sources.content();
    lines.add(source(readers, shelf));
    lines.add(edition(readers, shelf));
    lines.add(young == null ? IN_DOUBT : young);
    if (young != null) {
      lines.addAll(sources.young());
    }
    Files.write(LogState.cache(log).resolve(readers), lines);
  }

  private String source(String readers, Shelf shelf) throws IOException {
    Stamps records = new Stamps();
    for (Path file : shelf.reliedOn(readers)) {
      records.add(log, file);
    }
    return Sha256.of(sources.stamps() + "\n" + records.text());
  }

  private String edition(String readers, Shelf shelf) throws IOException {
    Stamps stamps = new Stamps();
    stamps.addAll(shelf.published(readers), List.of());
    return Sha256.of(stamps.text());
  }
}
