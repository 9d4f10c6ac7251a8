package chinelog.audit;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What was searched and found.
 *
 * @param searched lines for the report: kinds of files, counts, what was looked for
 * @param cleanPictures SHA-256 of all pictures in which nothing was found
 * @param outcome which files were found clean of what, so that they need not be searched again
 */
public record AuditReport(
    List<Finding> findings, List<String> searched, Set<String> cleanPictures, Searched outcome) {

  /** The same with further findings, told before its own. */
  public AuditReport with(List<Finding> more) {
    return new AuditReport(
        Stream.concat(more.stream(), findings.stream()).toList(), searched, cleanPictures, outcome);
  }

  public boolean isClean() {
    return findings.isEmpty();
  }
}
