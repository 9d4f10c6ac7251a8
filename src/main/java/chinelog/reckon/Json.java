package chinelog.reckon;

import java.util.Collection;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Words as JSON has them (RFC 8259). */
public final class Json {

  private Json() {}

  static String array(Collection<String> words) {
    return words.stream().map(Json::quoted).collect(Collectors.joining(", ", "[", "]"));
  }

  /** A string (section 7), or {@code null}. */
  public static String quoted(@Nullable String text) {
    if (text == null) {
      return "null";
    }
    StringBuilder quoted = new StringBuilder("\"");
    for (char c : text.toCharArray()) {
      switch (c) {
        case '"', '\\' -> quoted.append('\\').append(c);
        case '\n' -> quoted.append("\\n");
        case '\t' -> quoted.append("\\t");
        default -> {
          if (c < 0x20) {
            quoted.append(String.format(Locale.ROOT, "\\u%04x", (int) c));
          } else {
            quoted.append(c);
          }
        }
      }
    }
    return quoted.append('"').toString();
  }
}
