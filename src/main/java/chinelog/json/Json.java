package chinelog.json;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Writes maps, collections, words, numbers, truths and null as JSON (RFC 8259). */
public final class Json {

  private Json() {}

  /** On one line, such as {@code {"scale": 16}}; may stand within a script element of HTML. */
  public static String of(@Nullable Object value) {
    if (value instanceof Map<?, ?> map) {
      return map.entrySet().stream()
          .map(e -> quoted(String.valueOf(e.getKey())) + ": " + of(e.getValue()))
          .collect(Collectors.joining(", ", "{", "}"));
    }
    if (value instanceof Collection<?> items) {
      return items.stream().map(Json::of).collect(Collectors.joining(", ", "[", "]"));
    }
    if (value instanceof BigDecimal number) {
      return number.toPlainString();
    }
    return value == null || value instanceof Number || value instanceof Boolean
        ? String.valueOf(value)
        : quoted(value.toString());
  }

  /** An array with each item on a line of its own. */
  public static String lines(List<?> items) {
    return items.stream().map(Json::of).collect(Collectors.joining(",\n  ", "[\n  ", "\n]"));
  }

  /** An object with each field on a line of its own. */
  public static String lines(Map<String, ?> fields) {
    return fields.entrySet().stream()
        .map(f -> quoted(f.getKey()) + ": " + of(f.getValue()))
        .collect(Collectors.joining(",\n  ", "{\n  ", "\n}"));
  }

  /** Section 7; {@code <}, {@code >} and {@code &} are escaped for the page around it. */
  private static String quoted(String text) {
    StringBuilder out = new StringBuilder("\"");
    for (char c : text.toCharArray()) {
      if (c == '"' || c == '\\') {
        out.append('\\').append(c);
      } else if (c < 0x20 || c == '<' || c == '>' || c == '&' || c == '\u2028' || c == '\u2029') {
        out.append("\\u%04x".formatted((int) c));
      } else {
        out.append(c);
      }
    }
    return out.append('"').toString();
  }
}
