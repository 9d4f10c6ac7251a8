package chinelog.publish;

import chinelog.log.records.Log;
import chinelog.log.records.Readers;
import chinelog.photo.Leftovers;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.problem.Sentence;
import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Where a log's editions stand: what is published, the workshop's own, what is being made, and the
 * private records.
 *
 * <p>An edition is made in a folder beside the published ones and put in its place by renaming. If
 * the machine stops between the two renames, the next command finds the old edition set aside and
 * puts it back.
 *
 * @param ofWorkshop ids of the readers whose editions never stand among what may leave the workshop
 */
record Shelf(Path log, Set<String> ofWorkshop) {

  private static final String PUBLISHED = "published";
  private static final String WORKSHOP = "workshop";

  /** Ends no id of readers, which holds no dot. */
  private static final String DRAFT = ".draft";

  Shelf(Path log) {
    this(log, Set.of());
  }

  /** The shelf, with the editions of those who are party to everything in their own place. */
  Shelf of(Log read) {
    return new Shelf(log, ofWorkshop(read));
  }

  /** Ids of the readers who are party to everything. */
  static Set<String> ofWorkshop(Log read) {
    return read.readers().stream()
        .filter(read::isPartyToAll)
        .map(Readers::id)
        .collect(Collectors.toUnmodifiableSet());
  }

  Path published(String readers) {
    return log.resolve(part(readers)).resolve(readers);
  }

  /** Where an edition stands, below the log's folder, such as {@code published/client}. */
  String name(String readers) {
    return part(readers) + "/" + readers;
  }

  private String part(String readers) {
    return ofWorkshop.contains(readers) || readers.endsWith(DRAFT) ? WORKSHOP : PUBLISHED;
  }

  /** Under what name the draft of some readers' edition stands, such as {@code public.draft}. */
  static String draft(String readers) {
    return readers + DRAFT;
  }

  /**
   * A reminder of each full copy that stands among what may leave the workshop, where earlier
   * versions put it, or an earlier list of readers did.
   */
  List<Problem> fullCopies() {
    return ofWorkshop.stream()
        .sorted()
        .filter(who -> Files.exists(log.resolve(PUBLISHED).resolve(who), LinkOption.NOFOLLOW_LINKS))
        .map(
            who ->
                Problem.reminder(
                    Place.of(PUBLISHED + "/" + who),
                    Sentence.of(
                        "This edition holds everything that is under agreements, and it stands"
                            + " among what may leave the workshop; its place is now {0}.",
                        name(who)),
                    "Delete it, or move it out of the folder, before anybody copies that to a host;"
                        + " chinelog leaves it alone."))
        .toList();
  }

  /**
   * What chinelog itself makes in a log, below its folder. Something of the maker's own in a folder
   * called {@code workshop} is not of it.
   */
  static List<String> made(Path log) throws IOException {
    List<String> made = new ArrayList<>(List.of(PUBLISHED, "records", Forms.FOLDER));
    Path records = log.resolve("records");
    if (Files.isDirectory(records)) {
      try (DirectoryStream<Path> folders = Files.newDirectoryStream(records, Files::isDirectory)) {
        folders.forEach(f -> made.add(WORKSHOP + "/" + f.getFileName()));
      }
    }
    return made;
  }

  Path records(String readers) {
    return log.resolve("records").resolve(readers);
  }

  Path manifest(String readers) {
    return records(readers).resolve("manifest.txt");
  }

  /** The manifest of an edition about to be put in its place. */
  private Path nextManifest(String readers) {
    return records(readers).resolve("manifest.next.txt");
  }

  /** The ledger of the figures printed for some readers. */
  FigureLedger ledger(String readers) {
    return new FigureLedger(
        records(readers).resolve("ledger.csv"),
        readers,
        Files.exists(records(readers).resolve("published.txt")));
  }

  private Path keptBackIn(String readers) {
    return records(readers).resolve("kept-back.txt");
  }

  /** What was kept back when the edition of some readers was last published; nothing if never. */
  SortedMap<String, String> keptBack(String readers) {
    SortedMap<String, String> kept = new TreeMap<>();
    try {
      for (String line : CacheLines.read(keptBackIn(readers))) {
        int cut = line.indexOf('\t');
        if (cut > 0) {
          kept.put(line.substring(0, cut), line.substring(cut + 1));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return kept;
  }

  void keepBack(String readers, SortedMap<String, String> kept) throws IOException {
    List<String> lines = new ArrayList<>();
    kept.forEach((hash, agreements) -> lines.add(hash + "\t" + agreements));
    CacheLines.write(keptBackIn(readers), lines);
  }

  /** The records on which the next edition of some readers depends: their own, and all ledgers. */
  List<Path> reliedOn(String readers) throws IOException {
    List<Path> files = new ArrayList<>();
    for (String own : List.of("manifest.txt", "register.txt", "published.txt")) {
      files.add(records(readers).resolve(own));
    }
    recorded().forEach(who -> files.add(records(who).resolve("ledger.csv")));
    return files.stream().filter(Files::isRegularFile).toList();
  }

  /** Ids of all readers who were ever given an edition. */
  SortedSet<String> recorded() throws IOException {
    SortedSet<String> all = new TreeSet<>();
    Path records = log.resolve("records");
    if (Files.isDirectory(records)) {
      try (DirectoryStream<Path> folders =
          Files.newDirectoryStream(records, f -> Files.isRegularFile(f.resolve("ledger.csv")))) {
        folders.forEach(f -> all.add(String.valueOf(f.getFileName())));
      }
    }
    return all;
  }

  private Path making(String readers) {
    return log.resolve(".chinelog").resolve("making").resolve(readers);
  }

  private Path setAside(String readers) {
    return log.resolve(".chinelog").resolve("set-aside").resolve(readers);
  }

  /**
   * Keeps other runs of chinelog from publishing this log until it is closed.
   *
   * @throws ProblemException if one is at it already
   */
  Closeable claim() throws IOException {
    requireOwnCache(log);
    Path file = log.resolve(".chinelog").resolve("claimed");
    Files.createDirectories(file.getParent());
    FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    try {
      if (channel.tryLock() != null) {
        return channel;
      }
    } catch (OverlappingFileLockException e) {
      // The other run is in this very process.
    }
    channel.close();
    throw new ProblemException(
        Place.of(log.toString()),
        "Another run of chinelog is at work on this log.",
        "Let it end first.");
  }

  /** Puts back what an interrupted swap left set aside, and settles which manifest holds. */
  void recover(String readers) throws IOException {
    Path aside = setAside(readers);
    Path place = published(readers);
    if (Files.exists(aside)) {
      if (Files.exists(place)) {
        delete(aside);
      } else {
        Files.createDirectories(place.getParent());
        Files.move(aside, place, StandardCopyOption.ATOMIC_MOVE);
      }
    }
    Path next = nextManifest(readers);
    if (Files.exists(next)) {
      if (Files.isDirectory(place)
          && Manifest.of(place).files().equals(Manifest.read(next).files())) {
        Files.move(next, manifest(readers), StandardCopyOption.ATOMIC_MOVE);
      } else {
        Files.delete(next);
      }
    }
  }

  /**
   * Refuses a log whose cache would be written to another place.
   *
   * @throws ProblemException if {@code .chinelog} is a link, or a file
   */
  static void requireOwnCache(Path log) throws ProblemException {
    Optional<Problem> misplaced = findMisplaced(log, ".chinelog");
    if (misplaced.isPresent()) {
      throw new ProblemException(misplaced.get());
    }
  }

  /** What is wrong with a folder that chinelog keeps in a log. */
  private static Optional<Problem> findMisplaced(Path log, String part) {
    Path folder = log.resolve(part);
    if (Files.isSymbolicLink(folder)) {
      return Optional.of(
          Problem.error(
              Place.of(part),
              "This folder is a link to another place.",
              "Remove the link; chinelog writes only inside the log."));
    }
    return Files.exists(folder) && !Files.isDirectory(folder)
        ? Optional.of(
            Problem.error(
                Place.of(part),
                "This is a file, but chinelog keeps a folder of this name in a log.",
                "Move the file away, or rename it."))
        : Optional.empty();
  }

  /** A problem for each thing that stands where the edition is to stand and is not ours. */
  List<Problem> foreign(String readers) throws IOException {
    List<Problem> problems = new ArrayList<>();
    String base = name(readers);
    for (String part : List.of(part(readers), "records", "records/" + readers)) {
      findMisplaced(log, part).ifPresent(problems::add);
    }
    if (!problems.isEmpty()) {
      return problems;
    }
    Manifest ours = Manifest.read(manifest(readers));
    Set<String> foreign = ours.foreignIn(published(readers));
    if (ours.files().isEmpty() && !foreign.isEmpty()) {
      return List.of(
          Problem.error(
              Place.of(base),
              Sentence.of(
                  "No list tells which files here chinelog wrote (records/{0}/manifest.txt).",
                  readers),
              "Move this away; chinelog deletes nothing of which it does not know that it wrote"
                  + " it."));
    }
    for (String name : foreign) {
      problems.add(
          Problem.error(
              Place.of(name.isEmpty() ? base : base + "/" + name),
              "This was not written by chinelog, and an edition holds nothing else.",
              "Move it out of the folder; chinelog deletes nothing that it did not write."));
    }
    return problems;
  }

  /** A problem for each file of the edition that is not as it was written: somebody's work. */
  List<Problem> changed(String readers) throws IOException {
    return Manifest.read(manifest(readers)).changedIn(published(readers)).stream()
        .map(
            name ->
                Problem.error(
                    Place.of(name(readers) + "/" + name),
                    "This was changed after chinelog wrote it, and the next edition would take its"
                        + " place.",
                    "Move it out of the folder if the change is to be kept, else delete it; then"
                        + " publish again."))
        .toList();
  }

  /** An empty folder to make an edition in. */
  Path startMaking(String readers) throws IOException {
    Path folder = making(readers);
    delete(folder);
    Files.createDirectories(folder);
    return folder;
  }

  void dropMaking(String readers) throws IOException {
    delete(making(readers));
  }

  /** Writes down what the edition that was made consists of, before it is put in its place. */
  void announce(String readers, Manifest manifest) throws IOException {
    Files.createDirectories(records(readers));
    manifest.write(nextManifest(readers));
  }

  /** Puts the edition that was made and announced in the place of the one that stands. */
  void swap(String readers) throws IOException {
    Path place = published(readers);
    Path aside = setAside(readers);
    Files.createDirectories(place.getParent());
    Files.createDirectories(aside.getParent());
    delete(aside);
    if (Files.exists(place)) {
      Files.move(place, aside, StandardCopyOption.ATOMIC_MOVE);
    }
    try {
      Files.move(making(readers), place, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      recover(readers);
      throw e;
    }
    Files.move(nextManifest(readers), manifest(readers), StandardCopyOption.ATOMIC_MOVE);
    delete(aside);
  }

  private static void delete(Path folder) throws IOException {
    if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      Leftovers.delete(folder);
    }
  }
}
