package chinelog.log.records;

import chinelog.label.Label;
import chinelog.problem.Place;
import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A trade reckoning that facts.yaml asks for, such as the hull's form from its table of offsets.
 *
 * @param prefix what the names of its facts begin with, such as {@code hull}
 * @param reckoning which one, such as {@code hull-form}
 * @param inputs by name: an expression, the name of a table, or a word, as written
 */
public record Request(
    String prefix,
    Marked<String> reckoning,
    SortedMap<String, Marked<String>> inputs,
    Label label,
    Place place) {

  public Request {
    inputs = Collections.unmodifiableSortedMap(new TreeMap<>(inputs));
  }

  public Request withInputs(SortedMap<String, Marked<String>> otherInputs) {
    return new Request(prefix, reckoning, otherInputs, label, place);
  }
}
