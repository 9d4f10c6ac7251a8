package chinelog.photo;

import chinelog.log.Log;
import chinelog.problem.Problem;
import java.util.List;

/**
 * The photographs of a log, linked to its entries.
 *
 * @param photographs by time taken, then path; those without a time last
 */
public record Album(List<Photograph> photographs, List<Problem> problems) {

  public Album {
    photographs = List.copyOf(photographs);
    problems = List.copyOf(problems);
  }

  /** Reads metadata of all photographs and links each to its entry. */
  public static Album open(Log log) {
    return open(log, Progress.SILENT);
  }

  /** Reads metadata of all photographs, new ones on all cores, and links each to its entry. */
  public static Album open(Log log, Progress progress) {
    return new AlbumOpening(log).open(progress);
  }
}
