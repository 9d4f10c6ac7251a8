package chinelog.edition;

import chinelog.edition.Edition.Line;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A small notation for sample text: {@code *emphasis*}, {@code **strong**}, {@code
 * [shown](fig:NAME)}, {@code [text](entry:ID)}, {@code ^[footnote]}.
 */
final class SampleText {

  private static final Pattern MARK =
      Pattern.compile("\\*\\*(.+?)\\*\\*|\\*(.+?)\\*|\\^\\[(.+?)]|\\[(.+?)]\\((fig:)?(.+?)\\)");

  private SampleText() {}

  static Text.Block p(String text) {
    return new Text.Paragraph(runs(text), List.of());
  }

  static List<Text.Run> runs(String text) {
    List<Text.Run> runs = new ArrayList<>();
    Matcher m = MARK.matcher(text);
    int from = 0;
    while (m.find()) {
      plain(text.substring(from, m.start()), runs);
      if (m.group(1) != null) {
        runs.add(new Text.Strong(runs(m.group(1))));
      } else if (m.group(2) != null) {
        runs.add(new Text.Emphasis(runs(m.group(2))));
      } else if (m.group(3) != null) {
        runs.add(new Text.Footnote(runs(m.group(3))));
      } else if (m.group(5) != null) {
        runs.add(new Text.FigureLink(m.group(6), m.group(4)));
      } else {
        runs.add(new Text.Link(m.group(6), runs(m.group(4))));
      }
      from = m.end();
    }
    plain(text.substring(from), runs);
    return List.copyOf(runs);
  }

  private static void plain(String text, List<Text.Run> runs) {
    if (!text.isEmpty()) {
      runs.add(new Text.Plain(text));
    }
  }

  static Line line(String title, String shown, String note, @Nullable String figure) {
    return new Line(title, shown, note, figure);
  }
}
