package chinelog.withhold;

import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * In which places the secrets of random builds lay, and how they differed between twins: changed
 * beside a note, or there in one and not in the other.
 */
final class Coverage {

  private final Map<String, Integer> hits = new ConcurrentHashMap<>();

  /** A secret of which a note may show; the twin has another one there. */
  void changed(String place) {
    hits.merge("changed " + place, 1, Integer::sum);
  }

  /** A secret of which nothing may show; the twin may have none there. */
  void added(String place) {
    hits.merge("added " + place, 1, Integer::sum);
  }

  /** Of the cells given, those never hit. */
  SortedSet<String> missing(Stream<String> changed, Stream<String> added) {
    return Stream.concat(changed.map(c -> "changed " + c), added.map(a -> "added " + a))
        .filter(cell -> !hits.containsKey(cell))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** All cells with how often each was hit. */
  Map<String, Integer> hits() {
    return new TreeMap<>(hits);
  }
}
