package chinelog.log;

import chinelog.log.reading.FolderWalk;
import chinelog.log.reading.Inventory;
import chinelog.log.records.Answer;
import chinelog.log.records.Log;
import chinelog.problem.Problem;
import chinelog.problem.Problems;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;

/** Reads the folder of one build. */
public final class LogReader {

  private final LocalDate today;
  private final ZoneId zone;
  private final PhotoDays photoDays;

  /** Reads what is written, without looking into photographs. */
  public LogReader(LocalDate today, ZoneId zone) {
    this(today, zone, PhotoDays.UNKNOWN);
  }

  /**
   * @param today a note dated after this day is a problem
   * @param zone of a log that names none
   * @param photoDays asked about the photographs of a note that has no date
   */
  public LogReader(LocalDate today, ZoneId zone, PhotoDays photoDays) {
    this.today = today;
    this.zone = zone;
    this.photoDays = photoDays;
  }

  /**
   * Everything in the folder, with all problems found on the way.
   *
   * <p>A folder without log.yaml is read as well as can be: every note and photograph in it, with
   * stages after its folders and under no agreement.
   *
   * @throws IOException if the folder itself cannot be listed
   */
  public Reading read(Path folder) throws IOException {
    return read(folder, new TreeMap<>());
  }

  /**
   * The same as if some files held other texts.
   *
   * @param unsaved these texts, by path below the folder, such as {@code entries/2026-03-14.md}
   * @throws IOException if the folder itself cannot be listed
   */
  public Reading read(Path folder, SortedMap<String, String> unsaved) throws IOException {
    Problems problems = new Problems();
    Inventory inventory = FolderWalk.walk(folder, problems).with(unsaved);
    // Where log.yaml is a link, a folder or misnamed, this is no folder without log.yaml.
    boolean astray = inventory.isLoose() && problems.hasErrors();
    Assembly assembly = new Assembly(inventory, today, zone, photoDays, problems);
    if (astray || !assembly.isSettled()) {
      List<Problem> first = problems.list().stream().filter(Problem::isError).toList();
      return new Reading(assembly.log(), List.of(), first, false);
    }
    Log log = assembly.log();
    List<Answer> answers = assembly.answers();
    return new Reading(log, answers, problems.list(), true);
  }

  /**
   * What was read, as far as it could be, and what was wrong with it.
   *
   * @param answers to questions that were asked about it
   * @param settled whether log.yaml could be read or is rightly not there; if not, only that is
   *     told, as all else hangs on it
   */
  public record Reading(Log log, List<Answer> answers, List<Problem> problems, boolean settled) {}

  /** Words out of a name, such as "Red cedar" out of {@code red_cedar}. */
  static String title(String name) {
    String words = name.replace('_', ' ').replace('-', ' ').strip();
    if (words.isEmpty()) {
      return name;
    }
    int first = words.offsetByCodePoints(0, 1);
    return words.substring(0, first).toUpperCase(Locale.ROOT) + words.substring(first);
  }
}
