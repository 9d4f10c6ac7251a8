package chinelog.log.reading;

import chinelog.problem.Place;
import java.util.List;

/** A value of a YAML file as it is written, not yet taken for a number, a date or a word. */
public sealed interface Yaml {

  Place place();

  /** What it is, in words, such as "a list". */
  String kind();

  /**
   * One text.
   *
   * @param plain whether it stands without quotes
   */
  record Scalar(String text, boolean plain, Source source) implements Yaml {
    @Override
    public Place place() {
      return source.at(0);
    }

    @Override
    public String kind() {
      return isEmpty() ? "nothing" : "a single value";
    }

    public boolean isEmpty() {
      return plain && (text.isEmpty() || text.equals("~") || text.equals("null"));
    }
  }

  record Sequence(List<Yaml> items, Place place) implements Yaml {
    @Override
    public String kind() {
      return "a list";
    }
  }

  /** Keys with values, in the order written; no key stands twice. */
  record Mapping(List<Pair> pairs, Place place) implements Yaml {
    @Override
    public String kind() {
      return "a group of keys";
    }
  }

  record Pair(Scalar key, Yaml value) {}
}
