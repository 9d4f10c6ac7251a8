package chinelog.talk;

import chinelog.edition.Chart;
import chinelog.edition.Plate;
import java.util.List;

/** What a frame shows. */
sealed interface FrameContent {

  record Shot(Plate plate) implements FrameContent {}

  /**
   * Lettering.
   *
   * @param over a line above the title; may be empty
   * @param lines below the title
   * @param isTitle whether it stands for itself, in large letters
   */
  record Card(String over, String title, List<Line> lines, boolean isTitle)
      implements FrameContent {
    public Card {
      lines = List.copyOf(lines);
    }
  }

  /**
   * A line of a card.
   *
   * @param shown at its end, such as a figure; may be empty
   */
  record Line(String text, String shown) {}

  /**
   * A table.
   *
   * @param over a line above it
   * @param rows each with as many cells as {@code head}
   */
  record Table(String over, List<String> head, List<List<String>> rows, List<Boolean> rightAligned)
      implements FrameContent {}

  record Graph(Chart chart) implements FrameContent {}
}
