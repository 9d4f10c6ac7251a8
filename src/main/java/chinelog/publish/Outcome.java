package chinelog.publish;

import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;

/**
 * What came of publishing or of an audit.
 *
 * @param problems all of them, worst first; if one is an error, nothing was published
 * @param ofLog those that the log has whatever is made of it, which checking it tells as well
 * @param editions those that were made or audited; empty after an error
 * @param unchanged those that stand as they would be made, and were not made again
 */
public record Outcome(
    List<Problem> problems, List<Problem> ofLog, List<Made> editions, List<Unchanged> unchanged) {

  public boolean hasErrors() {
    return problems.stream().anyMatch(Problem::isError);
  }

  /** Reminders that only the making of editions brings up, such as of what cannot be printed. */
  public List<Problem> remindersOfEditions() {
    return problems.stream().filter(p -> !p.isError() && !ofLog.contains(p)).toList();
  }

  public boolean hasLeaks() {
    return editions.stream().anyMatch(e -> !e.findings().isEmpty());
  }

  /**
   * An edition.
   *
   * @param folder where it stands
   * @param withheld how many things are withheld, by the agreements they are under
   * @param released how many things were released into it
   * @param findings of its audit; if there are any in any edition, none was put in its place
   */
  public record Made(
      String readers,
      Path folder,
      List<String> files,
      int entries,
      int plates,
      int figures,
      SortedMap<String, Integer> withheld,
      int released,
      List<Finding> findings) {}

  /**
   * An edition that stands as it was published, since nothing it comes from has changed.
   *
   * @param folder where it stands
   */
  public record Unchanged(String readers, Path folder, List<String> files) {}

  /**
   * Something that the audit found.
   *
   * @param file below the edition's folder
   * @param where in the file, in words
   * @param what was found, in words
   */
  public record Finding(String file, Sentence where, Sentence what) {

    /** In one line. */
    public String in(Locale language) {
      return file + ", " + where.in(language) + ": " + what.in(language);
    }
  }
}
