package chinelog.audit;

import java.util.List;
import java.util.Map;

/**
 * What is known from earlier audits by the same program.
 *
 * @param decoded pictures that need not be decoded again; all else is done for them, too
 * @param hashes SHA-256 of the files of the edition, by name, as far as they are known
 * @param searched the last audit of the same readers' edition
 */
public record Before(Decoded decoded, Map<String, String> hashes, Searched searched) {

  /** Nothing is known: every file is read, decoded and searched. */
  public static Before nothing() {
    return new Before(new Decoded(List.of()), Map.of(), Searched.NOTHING);
  }
}
