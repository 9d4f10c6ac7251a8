package chinelog.desk.files;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** What a YAML text says, apart from how it is written, and how a change alters that. */
final class YamlMeaning {

  private YamlMeaning() {}

  static Object of(YamlValue value) {
    if (value instanceof YamlValue.Text text) {
      return text.text();
    }
    if (value instanceof YamlValue.Bare bare) {
      return bare.text();
    }
    if (value instanceof YamlValue.Items list) {
      return list.items().stream().map(YamlMeaning::of).toList();
    }
    Map<String, Object> pairs = new LinkedHashMap<>();
    ((YamlValue.Keys) value).pairs().forEach((key, v) -> pairs.put(key, of(v)));
    return pairs;
  }

  static Object with(Object whole, List<String> at, int depth, Object value) {
    if (depth == at.size()) {
      return value;
    }
    if (whole instanceof List<?> list) {
      List<Object> copy = new ArrayList<>(list);
      int index = Integer.parseInt(at.get(depth));
      copy.set(index, with(copy.get(index), at, depth + 1, value));
      return copy;
    }
    Map<String, Object> copy = copy(whole);
    Object old = copy.getOrDefault(at.get(depth), YamlSpot.Nothing.NOTHING);
    copy.put(at.get(depth), with(old, at, depth + 1, value));
    return copy;
  }

  static Object plus(Object whole, List<String> at, int depth, Object item) {
    if (depth < at.size()) {
      Object inner =
          whole instanceof List<?> list
              ? list.get(Integer.parseInt(at.get(depth)))
              : copy(whole).getOrDefault(at.get(depth), YamlSpot.Nothing.NOTHING);
      return with(whole, at.subList(0, depth + 1), depth, plus(inner, at, depth + 1, item));
    }
    List<Object> copy = new ArrayList<>((List<?>) whole);
    copy.add(item);
    return copy;
  }

  static Object without(Object whole, List<String> at, int depth) {
    if (whole instanceof List<?> list) {
      List<Object> copy = new ArrayList<>(list);
      int index = Integer.parseInt(at.get(depth));
      if (depth == at.size() - 1) {
        copy.remove(index);
      } else {
        copy.set(index, without(copy.get(index), at, depth + 1));
      }
      return copy;
    }
    Map<String, Object> copy = copy(whole);
    if (depth == at.size() - 1) {
      copy.remove(at.get(depth));
    } else {
      Object inner = Objects.requireNonNull(copy.get(at.get(depth)));
      copy.put(at.get(depth), without(inner, at, depth + 1));
    }
    return copy.isEmpty() ? YamlSpot.Nothing.NOTHING : copy;
  }

  private static Map<String, Object> copy(Object whole) {
    Map<String, Object> copy = new LinkedHashMap<>();
    if (whole instanceof Map<?, ?> map) {
      map.forEach((key, value) -> copy.put(String.valueOf(key), value));
    }
    return copy;
  }
}
