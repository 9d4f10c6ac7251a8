package chinelog.log.records;

import java.util.List;

/**
 * A part of a note's text that a mark may put under an agreement, as offsets in UTF-16 code units.
 *
 * @param level of a heading, from 1; 0 for all else
 * @param from its first code unit; of a phrase or a picture, its bracket or exclamation mark
 * @param to after its last one, where a mark may be put in; marks come after it
 * @param marks that are its own
 */
public record NotePart(Kind kind, int level, int from, int to, List<Mark> marks) {

  public NotePart {
    marks = List.copyOf(marks);
  }

  /** All agreements that its own marks name. */
  public List<String> agreements() {
    return marks.stream().flatMap(m -> m.agreements().stream()).distinct().toList();
  }

  /** Where it ends, its marks included. */
  public int endWithMarks() {
    return marks.isEmpty() ? to : marks.get(marks.size() - 1).to();
  }

  /** What a part is. */
  public enum Kind {
    HEADING,
    PARAGRAPH,
    PICTURE,
    PHRASE
  }

  /** A mark, from its brace to after its brace. */
  public record Mark(int from, int to, List<String> agreements) {}
}
