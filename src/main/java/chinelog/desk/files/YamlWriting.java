package chinelog.desk.files;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/** Writes values as YAML: as plainly as they can be, and never so that they could be misread. */
final class YamlWriting {

  /** Words that some programs take for something else. */
  private static final Set<String> TAKEN =
      Set.of("", "~", "null", "true", "false", "yes", "no", "on", "off", "y", "n", "<<", "=");

  private static final Set<String> NO_KEYS = Set.of("", "~", "null", "<<", "=");

  private static final int STEP = 2;
  private static final int WIDTH = 100;

  private final String lineEnd;

  YamlWriting(String lineEnd) {
    this.lineEnd = lineEnd;
  }

  /**
   * What stands after a key's colon or an item's dash, without the space before it.
   *
   * @param indent spaces before the key or the dash
   * @param like how the former value was written, where there was one
   */
  String after(YamlValue value, int indent, @Nullable ScalarStyle like) {
    if (value instanceof YamlValue.Items list && !list.flow() && !list.items().isEmpty()) {
      return lineEnd + items(list, indent + STEP);
    }
    if (value instanceof YamlValue.Keys keys && !keys.flow() && !keys.pairs().isEmpty()) {
      return lineEnd + keys(keys, indent + STEP);
    }
    if (value instanceof YamlValue.Text text) {
      return text(text.text(), indent, like);
    }
    return flow(value);
  }

  /** Lines without the last line end. */
  String keys(YamlValue.Keys keys, int indent) {
    List<String> lines = new ArrayList<>();
    for (Map.Entry<String, YamlValue> pair : keys.pairs().entrySet()) {
      lines.add(pair(pair.getKey(), pair.getValue(), indent));
    }
    return String.join(lineEnd, lines);
  }

  /** A key and its value, without the last line end. */
  String pair(String key, YamlValue value, int indent) {
    String after = after(value, indent, null);
    return " ".repeat(indent) + key(key) + ":" + (after.startsWith(lineEnd) ? "" : " ") + after;
  }

  private String items(YamlValue.Items list, int indent) {
    List<String> lines = new ArrayList<>();
    list.items().forEach(item -> lines.add(item(item, indent)));
    return String.join(lineEnd, lines);
  }

  /** An item and its dash, without the last line end. */
  String item(YamlValue item, int indent) {
    String dash = " ".repeat(indent) + "- ";
    return item instanceof YamlValue.Keys keys && !keys.flow() && !keys.pairs().isEmpty()
        ? dash + keys(keys, indent + STEP).substring(indent + STEP)
        : dash + after(item, indent, null).strip();
  }

  /** On one line, fit to stand between brackets. */
  String flow(YamlValue value) {
    if (value instanceof YamlValue.Text text) {
      return isPlain(text.text(), true) ? text.text() : quoted(text.text());
    }
    if (value instanceof YamlValue.Bare bare) {
      return bare.text();
    }
    List<String> parts = new ArrayList<>();
    if (value instanceof YamlValue.Items list) {
      list.items().forEach(item -> parts.add(flow(item)));
      return "[" + String.join(", ", parts) + "]";
    }
    flowPairs((YamlValue.Keys) value, parts);
    return "{" + String.join(", ", parts) + "}";
  }

  private void flowPairs(YamlValue.Keys keys, List<String> parts) {
    keys.pairs().forEach((key, value) -> parts.add(key(key) + ": " + flow(value)));
  }

  /** A key; those of a log, such as {@code on}, are words to us whatever others take them for. */
  String key(String key) {
    return NO_KEYS.contains(key) || !isPlainYaml(key, true) ? quoted(key) : key;
  }

  private String text(String text, int indent, @Nullable ScalarStyle like) {
    boolean block = like == ScalarStyle.LITERAL || like == ScalarStyle.FOLDED;
    if (text.contains("\n") || block) {
      String written = like == ScalarStyle.FOLDED ? folded(text, indent) : null;
      return written == null ? literal(text, indent) : written;
    }
    if (like == ScalarStyle.SINGLE_QUOTED && isPrintable(text)) {
      return "'" + text.replace("'", "''") + "'";
    }
    return like != ScalarStyle.DOUBLE_QUOTED && isPlain(text, false) ? text : quoted(text);
  }

  private String literal(String text, int indent) {
    String body = text.stripTrailing();
    boolean odd = !isPrintable(text) || body.isEmpty() || !text.startsWith(body);
    String ends = odd ? "" : text.substring(body.length());
    if (odd || !ends.matches("\\n*") || body.startsWith(" ") || body.startsWith("\n")) {
      return quoted(text);
    }
    StringBuilder out = new StringBuilder("|").append(chomping(ends.length()));
    for (String line : body.split("\n", -1)) {
      out.append(lineEnd).append(line.isEmpty() ? "" : " ".repeat(indent + STEP) + line);
    }
    return out.append(lineEnd.repeat(Math.max(0, ends.length() - 1))).toString();
  }

  private @Nullable String folded(String text, int indent) {
    String body = text.stripTrailing();
    String ends = text.substring(body.length());
    if (!isPrintable(text) || !body.matches("\\S+( \\S+)*") || !ends.matches("\\n?")) {
      return null;
    }
    StringBuilder out = new StringBuilder(">").append(chomping(ends.length()));
    int column = WIDTH;
    for (String word : body.split(" ")) {
      boolean fresh = column + 1 + word.length() > WIDTH;
      out.append(fresh ? lineEnd + " ".repeat(indent + STEP) : " ").append(word);
      column = (fresh ? indent + STEP : column + 1) + word.length();
    }
    return out.toString();
  }

  private static String chomping(int lineEnds) {
    return lineEnds == 0 ? "-" : lineEnds == 1 ? "" : "+";
  }

  private static boolean isPlain(String text, boolean flow) {
    return !TAKEN.contains(text.toLowerCase(Locale.ROOT)) && isPlainYaml(text, flow);
  }

  private static boolean isPlainYaml(String text, boolean flow) {
    if (text.contains("\n")
        || text.contains("\t")
        || !isPrintable(text)
        || !text.strip().equals(text)) {
      return false;
    }
    try {
      YamlSpot spot = YamlSpot.read(flow ? "{k: [" + text + "]}" : "k: " + text);
      YamlSpot value =
          spot instanceof YamlSpot.Mapping m && m.pairs().size() == 1
              ? m.pairs().get(0).value()
              : null;
      if (flow) {
        value =
            value instanceof YamlSpot.Sequence s && s.items().size() == 1 ? s.items().get(0) : null;
      }
      return value instanceof YamlSpot.Scalar s
          && s.style() == ScalarStyle.PLAIN
          && s.text().equals(text);
    } catch (YamlEngineException e) {
      return false;
    }
  }

  private static boolean isPrintable(String text) {
    return text.codePoints()
        .allMatch(c -> c == '\n' || !Character.isISOControl(c) && !isLineSeparator(c));
  }

  private static boolean isLineSeparator(int c) {
    return c == 0x2028 || c == 0x2029 || c == 0xfeff || c >= 0xd800 && c <= 0xdfff;
  }

  private static String quoted(String text) {
    StringBuilder out = new StringBuilder("\"");
    text.codePoints()
        .forEach(
            c -> {
              if (c == '"' || c == '\\') {
                out.append('\\').appendCodePoint(c);
              } else if (c == '\n') {
                out.append("\\n");
              } else if (c == '\t') {
                out.append("\\t");
              } else if (Character.isISOControl(c) || isLineSeparator(c)) {
                out.append(String.format(Locale.ROOT, "\\u%04x", c));
              } else {
                out.appendCodePoint(c);
              }
            });
    return out.append('"').toString();
  }
}
