package chinelog.desk.files;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A value to be written into a YAML file. */
public sealed interface YamlValue {

  /** Words, which are put in quotes where they would otherwise be taken for something else. */
  record Text(String text) implements YamlValue {}

  /** Written as it is, such as {@code true} or {@code 0.48}. */
  record Bare(String text) implements YamlValue {}

  /**
   * A list.
   *
   * @param flow whether it is written on one line, as {@code [a, b]}
   */
  record Items(List<YamlValue> items, boolean flow) implements YamlValue {
    public Items {
      items = List.copyOf(items);
    }
  }

  /**
   * Keys with values, in the order given.
   *
   * @param flow whether they are written on one line, as {@code {a: 1, b: 2}}
   */
  record Keys(Map<String, YamlValue> pairs, boolean flow) implements YamlValue {
    public Keys {
      pairs = Collections.unmodifiableMap(new LinkedHashMap<>(pairs));
    }
  }

  static YamlValue text(String text) {
    return new Text(text);
  }

  static YamlValue bare(String text) {
    return new Bare(text);
  }

  /** Such as {@code [public, client]}. */
  static YamlValue words(List<String> words) {
    return new Items(words.stream().map(YamlValue::text).toList(), true);
  }

  /** The agreements of a mark: one word, or a list of several. */
  static YamlValue under(List<String> agreements) {
    return agreements.size() == 1 ? text(agreements.get(0)) : words(agreements);
  }
}
