package chinelog.audit;

import java.util.HashSet;
import java.util.Set;

/**
 * The parts of one document in which nothing was found: pages, pictures and streams, each by a
 * digest of all that it is made of. What an earlier audit that looked for the same found clean need
 * not be searched again.
 */
final class CleanParts {

  private static final String OF = "@";

  private final String file;
  private final Set<String> before;
  private final Set<String> now = new HashSet<>();

  /**
   * @param file the document's name
   * @param before marks of parts found clean of all that is looked for now; none where it was less
   */
  CleanParts(String file, Set<String> before) {
    this.file = file;
    this.before = before;
  }

  /**
   * Whether a part was found clean before. Whatever is asked for counts as part of the document.
   */
  boolean has(String part) {
    String mark = part + OF + file;
    now.add(mark);
    return before.contains(mark);
  }

  /** A part that has to be searched every time. */
  void remove(String part) {
    now.remove(part + OF + file);
  }

  /** Marks of all parts, once nothing was found in the document. */
  Set<String> marks() {
    return now;
  }

  /** All marks that are known of a document that stands as it was. */
  Set<String> marksBefore() {
    Set<String> marks = new HashSet<>(before);
    marks.removeIf(mark -> !mark.endsWith(OF + file));
    return marks;
  }
}
