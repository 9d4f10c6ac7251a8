package chinelog.audit;

import java.util.Map;
import java.util.Set;

/**
 * What is known from earlier audits by the same program.
 *
 * @param decodable SHA-256 of pictures that need not be decoded again, since nothing was found in
 *     them before; all else is done for them, too
 * @param hashes SHA-256 of the files of the edition, by name, as far as they are known
 * @param searched the last audit of the same readers' edition
 */
public record Before(Set<String> decodable, Map<String, String> hashes, Searched searched) {

  /** Nothing is known: every file is read, decoded and searched. */
  public static final Before NONE = new Before(Set.of(), Map.of(), Searched.NOTHING);
}
