package chinelog.desk.files;

import chinelog.problem.Problem;

/** What became of a change to a file. */
public sealed interface WriteOutcome {

  /** The file now stands so. */
  record Written(FileVersion now) implements WriteOutcome {}

  /**
   * Nothing was written: another program has changed the file since it was seen.
   *
   * @param wanted the text that was to be written; empty for a file that was to be taken away, and
   *     where the version that splices were made for was read too long ago
   * @param onDisk the file as it stands
   */
  record Changed(String wanted, FileVersion onDisk) implements WriteOutcome {}

  /** Nothing was written, and nothing is lost: the disk is full, or the file is out of bounds. */
  record Refused(Problem problem) implements WriteOutcome {}
}
