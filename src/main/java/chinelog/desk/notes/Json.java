package chinelog.desk.notes;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What is told to scripts (RFC 8259). */
final class Json {

  private Json() {}

  static String text(String text) {
    return chinelog.json.Json.of(text);
  }

  static String list(List<String> items) {
    return "[" + String.join(", ", items) + "]";
  }

  static Fields fields() {
    return new Fields();
  }

  /** An object in the making. */
  static final class Fields {

    private final Map<String, String> fields = new LinkedHashMap<>();

    /**
     * @param json the value, written as JSON
     */
    Fields put(String name, String json) {
      fields.put(name, json);
      return this;
    }

    String json() {
      return fields.entrySet().stream()
          .map(f -> text(f.getKey()) + ": " + f.getValue())
          .collect(Collectors.joining(", ", "{", "}"));
    }
  }
}
