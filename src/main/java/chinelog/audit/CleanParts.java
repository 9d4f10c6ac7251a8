package chinelog.audit;

import chinelog.problem.Sentence;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The parts of one document in which nothing was found: pages, pictures and streams, each by a
 * digest of all that it is made of. What an earlier audit that looked for the same found clean need
 * not be searched again, but for the originals that were not known then.
 */
final class CleanParts {

  private static final String OF = "@";
  private static final char NOTE = '=';

  private final String suffix;
  private final Originals fresh;
  private final Map<String, String> before = new HashMap<>();
  private final Map<String, String> now = new HashMap<>();

  /**
   * @param file the document's name
   * @param marks of parts found clean of all that is looked for now, but for the originals
   * @param fresh those that were not looked for then
   */
  CleanParts(String file, Set<String> marks, Originals fresh) {
    this.suffix = OF + file;
    this.fresh = fresh;
    for (String mark : marks) {
      if (mark.endsWith(suffix)) {
        String part = mark.substring(0, mark.length() - suffix.length());
        int cut = part.indexOf(NOTE);
        before.put(cut < 0 ? part : part.substring(0, cut), cut < 0 ? "" : part.substring(cut + 1));
      }
    }
  }

  /**
   * Whether a part was found clean before. Whatever is asked for counts as part of the document.
   */
  boolean has(String part) {
    now.putIfAbsent(part, "");
    return before.containsKey(part);
  }

  /** Whether anything is looked for in parts that were found clean. */
  boolean hasFresh() {
    return fresh.known() > 0;
  }

  /** Looks in a part that was found clean for what was not looked for then. */
  void findFresh(byte[] part, Findings findings, Sentence where) {
    fresh.find(part, findings, where);
  }

  /** What was noted of a part that was found clean before; null if it was not. */
  @Nullable String findNote(String part) {
    String note = before.get(part);
    now.put(part, note == null ? "" : note);
    return note;
  }

  /** Notes something of a part for the next audit, without line breaks. */
  void note(String part, String note) {
    now.put(part, note);
  }

  /** A part that has to be searched every time. */
  void remove(String part) {
    now.remove(part);
  }

  /** Marks of all parts, once nothing was found in the document. */
  Set<String> marks() {
    return marks(now);
  }

  /** All marks that are known of a document that stands as it was. */
  Set<String> marksBefore() {
    return marks(before);
  }

  private Set<String> marks(Map<String, String> parts) {
    Set<String> marks = new HashSet<>();
    parts.forEach((part, note) -> marks.add(part + (note.isEmpty() ? "" : NOTE + note) + suffix));
    return marks;
  }
}
