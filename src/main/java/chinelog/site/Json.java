package chinelog.site;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Writes maps, lists, strings and numbers as JSON that may stand within a script element. */
final class Json {

  private Json() {}

  static String of(Object value) {
    if (value instanceof Map<?, ?> map) {
      return map.entrySet().stream()
          .map(e -> quoted(String.valueOf(e.getKey())) + ":" + of(e.getValue()))
          .collect(Collectors.joining(",", "{", "}"));
    }
    if (value instanceof List<?> list) {
      return list.stream().map(Json::of).collect(Collectors.joining(",", "[", "]"));
    }
    return value instanceof Number ? value.toString() : quoted(value.toString());
  }

  /** RFC 8259, section 7; {@code <}, {@code >} and {@code &} are escaped for the page around it. */
  private static String quoted(String text) {
    StringBuilder out = new StringBuilder("\"");
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
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
