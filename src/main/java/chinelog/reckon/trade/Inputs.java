package chinelog.reckon.trade;

import chinelog.log.records.Table;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What a reckoning is given, by the names of its {@link Parameter}s. What was not written is not
 * here.
 */
public record Inputs(
    Map<String, Quantity> quantities, Map<String, Table> tables, Map<String, String> words) {

  public Inputs {
    quantities = Collections.unmodifiableMap(new TreeMap<>(quantities));
    tables = Collections.unmodifiableMap(new TreeMap<>(tables));
    words = Collections.unmodifiableMap(new TreeMap<>(words));
  }

  /** What is the same only for inputs that no reckoning could tell apart. */
  Object key() {
    Map<String, String> inFull = new TreeMap<>();
    quantities.forEach((name, quantity) -> inFull.put(name, quantity.inFull()));
    return List.of(inFull, tables, words);
  }

  Optional<Quantity> findQuantity(String name) {
    return Optional.ofNullable(quantities.get(name));
  }

  /** Whether all these quantities are given. */
  boolean hasAll(String... names) {
    return quantities.keySet().containsAll(List.of(names));
  }

  Optional<Table> findTable(String name) {
    return Optional.ofNullable(tables.get(name));
  }

  String word(String name, String fallback) {
    return words.getOrDefault(name, fallback);
  }

  Quantity quantity(String name) throws TradeException {
    return findQuantity(name).orElseThrow(() -> missing(name, "a quantity"));
  }

  Table table(String name) throws TradeException {
    return findTable(name).orElseThrow(() -> missing(name, "the name of a table"));
  }

  SortedSet<String> names() {
    SortedSet<String> all = new TreeSet<>(quantities.keySet());
    all.addAll(tables.keySet());
    all.addAll(words.keySet());
    return all;
  }

  Inputs with(String name, Quantity value) {
    Map<String, Quantity> changed = new TreeMap<>(quantities);
    changed.put(name, value);
    return new Inputs(changed, tables, words);
  }

  private static TradeException missing(String name, CharSequence kind) {
    return new TradeException(
        name,
        Sentence.of("The reckoning needs \"{0}\".", name),
        Sentence.of("Give {0} for {1}.", Sentence.of(kind), name));
  }
}
