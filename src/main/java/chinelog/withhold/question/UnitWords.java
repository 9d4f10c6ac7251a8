package chinelog.withhold.question;

import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Units as people write them: symbols, and words in the languages of a log. */
final class UnitWords {

  private static final Map<String, List<String>> SYMBOLS = new HashMap<>();
  private static final Map<String, Optional<Unit>> UNITS = new ConcurrentHashMap<>();

  static {
    for (String line : CommonWords.Resource.lines("unit-words.txt")) {
      String[] parts = line.split(":", 2);
      for (String word : parts[1].strip().split("\\s+")) {
        SYMBOLS.computeIfAbsent(word, w -> new ArrayList<>()).add(parts[0].strip());
      }
    }
  }

  private UnitWords() {}

  /** The units that a folded word may name; "pounds" are of weight or money. */
  static List<Unit> named(String letters) {
    return SYMBOLS.getOrDefault(letters, List.of()).stream()
        .flatMap(s -> find(s).stream())
        .toList();
  }

  /** The unit of a symbol, as written; none where it is no unit. */
  static Optional<Unit> find(String symbol) {
    return UNITS.computeIfAbsent(symbol, UnitWords::parse);
  }

  private static Optional<Unit> parse(String symbol) {
    try {
      return Optional.of(Unit.parse(symbol));
    } catch (QuantityException e) {
      return Optional.empty();
    }
  }
}
