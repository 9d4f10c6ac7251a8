package chinelog.desk.files;

import java.util.List;

/** Lines and brackets of a YAML text, and what is put into them or taken out of them. */
record YamlLines(String yaml, String lineEnd) {

  Splice addToFlow(int last, String written) {
    int comma = skipToComma(last);
    return comma < 0
        ? Splice.insert(last, ", " + written)
        : Splice.insert(comma + 1, " " + written);
  }

  /** The comma after {@code from}, if nothing but space and remarks stands between; else -1. */
  private int skipToComma(int from) {
    int i = from;
    while (i < yaml.length()) {
      char c = yaml.charAt(i);
      if (c == '#') {
        i = lineEndAt(i);
      } else if (c == ',') {
        return i;
      } else if (!Character.isWhitespace(c)) {
        return -1;
      } else {
        i++;
      }
    }
    return -1;
  }

  /** Lines put in after the line on which {@code at} stands. */
  Splice addLines(int at, String lines) {
    boolean fresh = at > 0 && isLineEnd(yaml.charAt(at - 1));
    int end = fresh ? at : lineEndAt(at);
    if (fresh || yaml.isEmpty()) {
      return Splice.insert(end, lines + lineEnd);
    }
    return end == yaml.length()
        ? Splice.insert(end, lineEnd + lines)
        : Splice.insert(afterLineEnd(end), lines + lineEnd);
  }

  Splice takeFromFlow(List<int[]> spans, int index) {
    int from = spans.get(index)[0];
    int to = spans.get(index)[1];
    if (index < spans.size() - 1) {
      return Splice.delete(from, spans.get(index + 1)[0]);
    }
    return Splice.delete(index == 0 ? from : spans.get(index - 1)[1], to);
  }

  Splice takeLines(List<int[]> spans, int index) {
    int from = spans.get(index)[0];
    int lineAfter = spans.get(index)[2];
    int start = lineStart(from);
    boolean fresh = lineAfter > 0 && isLineEnd(yaml.charAt(lineAfter - 1));
    int end = fresh ? lineAfter : afterLineEnd(lineEndAt(lineAfter));
    if (yaml.substring(start, from).isBlank()) {
      return Splice.delete(start, end);
    }
    // The first key of an item stands beside its dash; the next one takes its place.
    int next = index + 1 < spans.size() ? spans.get(index + 1)[0] : end;
    boolean straight = lineStart(next) == end;
    return Splice.delete(from, straight ? next : lineEndAt(spans.get(index)[1]));
  }

  int dash(int itemFrom) {
    int i = itemFrom - 1;
    while (i >= 0 && yaml.charAt(i) != '-') {
      i--;
    }
    return i;
  }

  int column(int offset) {
    return yaml.codePointCount(lineStart(offset), offset);
  }

  private int lineStart(int offset) {
    int i = offset;
    while (i > 0 && !isLineEnd(yaml.charAt(i - 1))) {
      i--;
    }
    return i;
  }

  private int lineEndAt(int offset) {
    int i = offset;
    while (i < yaml.length() && !isLineEnd(yaml.charAt(i))) {
      i++;
    }
    return i;
  }

  private int afterLineEnd(int end) {
    return end >= yaml.length() ? end : yaml.startsWith("\r\n", end) ? end + 2 : end + 1;
  }

  private static boolean isLineEnd(char c) {
    return c == '\n' || c == '\r';
  }
}
