package chinelog.audit;

import java.util.List;
import java.util.Set;

/**
 * What was searched and found.
 *
 * @param searched lines for the report: kinds of files, counts, what was looked for
 * @param cleanPictures SHA-256 of all pictures in which nothing was found
 * @param outcome which files were found clean of what, so that they need not be searched again
 */
public record AuditReport(
    List<Finding> findings, List<String> searched, Set<String> cleanPictures, Searched outcome) {

  public boolean isClean() {
    return findings.isEmpty();
  }
}
