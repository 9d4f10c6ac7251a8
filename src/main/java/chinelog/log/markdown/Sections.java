package chinelog.log.markdown;

import chinelog.label.Label;
import java.util.ArrayDeque;
import java.util.Deque;

/** The sections that a block stands in: a heading's mark holds until one of its level or above. */
final class Sections {

  private final Label outer;
  private final Deque<Section> open = new ArrayDeque<>();

  private record Section(int level, Label label) {}

  Sections(Label outer) {
    this.outer = outer;
  }

  void enter(int level, Label mark) {
    while (!open.isEmpty() && open.getLast().level >= level) {
      open.removeLast();
    }
    open.addLast(new Section(level, label().join(mark)));
  }

  Label label() {
    return open.isEmpty() ? outer : open.getLast().label;
  }
}
