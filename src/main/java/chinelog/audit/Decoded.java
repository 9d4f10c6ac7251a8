package chinelog.audit;

import java.util.Collection;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Pictures that were opened to their end and in which nothing was found, by their SHA-256: the same
 * bytes need not be decoded again, in this edition or another. All audits that share it add to it;
 * it may be used from several threads.
 */
public final class Decoded {

  private final Set<String> hashes = ConcurrentHashMap.newKeySet();

  /**
   * Begins with those of earlier audits.
   *
   * @param before by their SHA-256 in hexadecimal
   */
  public Decoded(Collection<String> before) {
    hashes.addAll(before);
  }

  boolean has(String sha256) {
    return hashes.contains(sha256);
  }

  void add(String sha256) {
    hashes.add(sha256);
  }
}
