package chinelog.talk;

import java.util.ArrayList;
import java.util.List;

/**
 * What is said while one frame is shown.
 *
 * @param chapter title of the chapter that begins with it; empty if none does
 * @param entry place of its entry in the post; -1 for what belongs to none
 * @param parts in their order
 */
record Shot(FrameContent sight, String chapter, int entry, List<Part> parts) {

  Shot {
    parts = List.copyOf(parts);
  }

  /** What belongs to no entry. */
  Shot(FrameContent sight, String chapter, List<Part> parts) {
    this(sight, chapter, -1, parts);
  }

  sealed interface Part {}

  /**
   * A sentence.
   *
   * @param written as it stands in captions
   * @param spoken as it is said
   */
  record Said(String written, String spoken) implements Part {}

  /** Nothing is said for a while. */
  record Pause(long ms) implements Part {}

  /** The sentences, in their order. */
  List<Said> said() {
    List<Said> said = new ArrayList<>();
    for (Part part : parts) {
      if (part instanceof Said sentence) {
        said.add(sentence);
      }
    }
    return said;
  }
}
