package chinelog.publish;

import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.module.ModuleDescriptor;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A version of chinelog, such as {@code chinelog 0.1.0 (2026-03-14, commit 43f6c12)}.
 *
 * @param number as in a release
 * @param date year-month-day of the commit it was built from; empty if unknown
 * @param commit abbreviated, with a {@code +} if what was built had been changed since; empty if
 *     unknown
 */
public record ProgramVersion(String number, String date, String commit) {

  private static final String FILE = "published-by.txt";

  private static final Pattern WORDS =
      Pattern.compile("chinelog (\\d[^ ]*)(?: \\((\\d{4}-\\d{2}-\\d{2}), commit ([^)]+)\\))?\\s*");

  /** By number, then by date. */
  private static final Comparator<ProgramVersion> AGE =
      Comparator.comparing((ProgramVersion v) -> ModuleDescriptor.Version.parse(v.number))
          .thenComparing(ProgramVersion::date);

  /** Of the program that is running. */
  public static ProgramVersion own() {
    Properties built = new Properties();
    try (InputStream in =
        ProgramVersion.class.getResourceAsStream("/chinelog/version.properties")) {
      if (in == null) {
        throw new IllegalStateException("the program was built without its version");
      }
      built.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    String commit = built.getProperty("commit", "");
    boolean changed = built.getProperty("changed", "").equals("true");
    return new ProgramVersion(
        built.getProperty("number"),
        built.getProperty("date", ""),
        changed && !commit.isEmpty() ? commit + "+" : commit);
  }

  @Override
  public String toString() {
    return "chinelog "
        + number
        + (commit.isEmpty() ? "" : " (" + date + ", commit " + commit + ")");
  }

  /** Writes into a log's records that this is what published it last. */
  public void record(Path log) throws IOException {
    Path file = file(log);
    if (!Optional.of(this).equals(findRecorded(log))) {
      Files.createDirectories(file.getParent());
      Records.replace(file, List.of(toString()));
    }
  }

  /** A reminder if a newer version than the one that is running has published this log. */
  public static Optional<Problem> newerThanOwn(Path log) throws IOException {
    ProgramVersion own = own();
    return findRecorded(log)
        .filter(last -> AGE.compare(last, own) > 0)
        .map(
            last ->
                Problem.reminder(
                    Place.of("records/" + FILE),
                    Sentence.of(
                        "This log was last published by {0}, which is newer than {1}.", last, own),
                    "Use the newer one: its editions may differ, and this one does not know the"
                        + " keys that came since."));
  }

  private static Path file(Path log) {
    return log.resolve("records").resolve(FILE);
  }

  private static Optional<ProgramVersion> findRecorded(Path log) throws IOException {
    Path file = file(log);
    if (!Files.isRegularFile(file)) {
      return Optional.empty();
    }
    Matcher words = WORDS.matcher(new String(Files.readAllBytes(file), StandardCharsets.UTF_8));
    return words.matches()
        ? Optional.of(
            new ProgramVersion(
                words.group(1),
                words.group(2) == null ? "" : words.group(2),
                words.group(3) == null ? "" : words.group(3)))
        : Optional.empty();
  }
}
