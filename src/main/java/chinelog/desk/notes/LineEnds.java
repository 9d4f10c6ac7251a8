package chinelog.desk.notes;

import java.util.ArrayList;
import java.util.List;

/** Ends lines of an edited text as the file's own lines end, so that no other byte changes. */
final class LineEnds {

  private LineEnds() {}

  /** A text with {@code \n} at the ends of lines, whatever stood there. */
  static String plain(String text) {
    return text.replace("\r\n", "\n").replace('\r', '\n');
  }

  /**
   * An edited text with the line ends of the file.
   *
   * @param file as it stands
   * @param edited with {@code \n} at the ends of lines
   */
  static String asIn(String file, String edited) {
    if (file.indexOf('\r') < 0) {
      return edited;
    }
    List<String> before = lines(file);
    List<String> after = lines(edited);
    int head = 0;
    int most = Math.min(before.size(), after.size());
    while (head < most && same(before.get(head), after.get(head))) {
      head++;
    }
    int tail = 0;
    while (tail < most - head
        && same(before.get(before.size() - 1 - tail), after.get(after.size() - 1 - tail))) {
      tail++;
    }
    String usual = usual(file);
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < after.size(); i++) {
      int fromEnd = after.size() - i;
      text.append(
          i < head
              ? before.get(i)
              : fromEnd <= tail
                  ? before.get(before.size() - fromEnd)
                  : after.get(i).replace("\n", usual));
    }
    return text.toString();
  }

  /** Lines with their ends. */
  private static List<String> lines(String text) {
    List<String> lines = new ArrayList<>();
    int start = 0;
    for (int i = 0; i < text.length(); i++) {
      boolean pair = text.startsWith("\r\n", i);
      if (pair || text.charAt(i) == '\n' || text.charAt(i) == '\r') {
        int end = i + (pair ? 2 : 1);
        lines.add(text.substring(start, end));
        start = end;
        i = end - 1;
      }
    }
    if (start < text.length()) {
      lines.add(text.substring(start));
    }
    return lines;
  }

  private static boolean same(String one, String other) {
    return plain(one).equals(plain(other));
  }

  private static String usual(String file) {
    int pairs = file.split("\r\n", -1).length - 1;
    int feeds = file.split("\n", -1).length - 1 - pairs;
    int returns = file.split("\r", -1).length - 1 - pairs;
    return pairs >= feeds && pairs >= returns ? "\r\n" : feeds >= returns ? "\n" : "\r";
  }
}
