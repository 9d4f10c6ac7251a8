package chinelog.keep;

import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Copies all of a log that cannot be made again, such as {@code my-build} into {@code
 * /media/stick/my-build.zip}, and verifies such a copy later.
 *
 * <p>A copy has its name only once it has been read back and found whole. It holds what is under
 * agreements. To restore a log is to copy the folder {@code data} out of it.
 */
public final class Keep {

  private static final String ZIP = ".zip";

  private Keep() {}

  /**
   * What is to be copied, and what is to be written about it.
   *
   * @param log the log's folder
   * @param into a folder that is not there yet or is empty, or a name that ends in .zip
   * @param program name and version of this program
   * @param today for the record
   */
  public record Request(Path log, Path into, String program, LocalDate today) {}

  /**
   * A copy that was made.
   *
   * @param leftOut how many files were left out since they can be made again, by folder
   */
  public record Kept(Path place, int files, long bytes, SortedMap<String, Integer> leftOut) {}

  /**
   * A copy that was looked through.
   *
   * @param madeOn the day that stands in it; empty where none does
   * @param files SHA-256 in hexadecimal by path in the log, as they were when the copy was made
   * @param bytes of all these files together
   * @param problems what is not as it was then
   */
  public record Checked(
      String madeOn, SortedMap<String, String> files, long bytes, List<Problem> problems) {

    public Checked {
      problems = List.copyOf(problems);
    }
  }

  /** Told after each file. */
  @FunctionalInterface
  public interface Progress {
    void done(int files, int of);
  }

  /**
   * Makes a copy and reads it back.
   *
   * @throws ProblemException if the place holds something already, lies in the log or is too small,
   *     or if the log changes meanwhile
   */
  public static Kept make(Request request, Progress progress) throws IOException {
    Path into = request.into.toAbsolutePath().normalize();
    requireOutside(into, request);
    boolean zip = isZip(into);
    Bag bag = zip ? new ZipBag(into) : new FolderBag(into);
    bag.requireFree(suggestion(request));
    KeptFiles log = KeptFiles.of(request.log);
    List<KeptFile> files = new ArrayList<>();
    int steps = 3 * log.files().size();
    for (var file : log.files().entrySet()) {
      files.add(KeptFile.of(file.getKey(), file.getValue()));
      progress.done(files.size(), steps);
    }
    long bytes = files.stream().mapToLong(KeptFile::size).sum();
    SortedMap<String, byte[]> tags = TagFiles.of(files, request);
    Progress copied = (done, of) -> progress.done(files.size() + done, steps);
    bag.write(tags, files, copied);
    Progress verified = (done, of) -> progress.done(2 * files.size() + done, steps);
    List<Problem> problems = bag.check(verified).problems();
    if (problems.stream().anyMatch(Problem::isError)) {
      Problem first = problems.get(0);
      bag.abandon();
      throw new ProblemException(
          first.place(),
          Sentence.of("{0} The copy was read back, and is not what was written.", first.what()),
          "See whether the disk is sound, and copy to another one.");
    }
    bag.finish();
    return new Kept(request.into, files.size(), bytes, log.leftOut());
  }

  /**
   * Verifies a copy: every file is there, is the same as it was, and none has been added.
   *
   * @throws ProblemException if there is no copy, or it cannot be opened
   */
  public static Checked check(Path copy, Progress progress) throws IOException {
    if (Files.isDirectory(copy)) {
      return BagCheck.check(copy, copy, progress);
    }
    if (!Files.exists(copy)) {
      throw new ProblemException(
          Place.of(copy.toString()),
          Files.exists(ZipBag.part(copy))
              ? "There is no such copy, but one beside it that was never finished."
              : "There is no such copy.",
          "Name the folder or zip that keep has made.");
    }
    return ZipBag.check(copy, copy, progress);
  }

  /** Paths of files in which a log differs from a copy of it: changed, new, or gone since. */
  public static List<String> changedSince(Checked copy, Path log) throws IOException {
    SortedMap<String, String> now = new TreeMap<>();
    for (var file : KeptFiles.of(log).files().entrySet()) {
      now.put(file.getKey(), KeptFile.of(file.getKey(), file.getValue()).sha256());
    }
    SortedMap<String, String> all = new TreeMap<>(copy.files);
    all.putAll(now);
    return all.keySet().stream()
        .filter(name -> !now.getOrDefault(name, "").equals(copy.files.getOrDefault(name, "")))
        .toList();
  }

  static boolean isZip(Path place) {
    return String.valueOf(place.getFileName()).toLowerCase(Locale.ROOT).endsWith(ZIP);
  }

  /** The name of a place without the ending of a zip. */
  static String baseName(Path place) {
    String name = String.valueOf(place.getFileName());
    return isZip(place) ? name.substring(0, name.length() - ZIP.length()) : name;
  }

  private static void requireOutside(Path into, Request request) throws IOException {
    Path log = request.log.toRealPath();
    Path there = into;
    while (there.getParent() != null && !Files.exists(there, LinkOption.NOFOLLOW_LINKS)) {
      there = there.getParent();
    }
    if (there.toRealPath().startsWith(log)) {
      throw new ProblemException(
          Place.of(request.into.toString()),
          "This lies in the log itself, and would be lost with it.",
          "Name a place outside of it, best on another disk.");
    }
  }

  private static String suggestion(Request request) throws IOException {
    Path name = request.log.toRealPath().getFileName();
    return (name == null ? "log" : name) + "-" + request.today;
  }
}
