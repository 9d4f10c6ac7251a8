package chinelog.withhold;

import java.util.List;
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
public final class Coverage {

  /** Places of secrets of which a note may show. */
  private static final List<String> CHANGED =
      List.of(
          "agreement",
          "alt text",
          "budget",
          "caption",
          "caption in the text",
          "cell",
          "centre of mass",
          "code",
          "entry",
          "footnote",
          "handover section",
          "heading",
          "hero",
          "hours",
          "hull",
          "kind",
          "licence",
          "limit",
          "lot",
          "maker",
          "material used",
          "measured",
          "measured more than once",
          "paragraph",
          "photograph",
          "phrase in caption",
          "phrase in caption in the text",
          "phrase in cell",
          "phrase in emphasis",
          "phrase in footnote",
          "phrase in heading",
          "phrase in link",
          "phrase in paragraph",
          "post",
          "price",
          "rate",
          "region",
          "release",
          "scale",
          "sheet",
          "stage",
          "stated and measured",
          "statement",
          "subject",
          "supplier",
          "table",
          "title of an entry",
          "title of the log",
          "weighed",
          "weighed more than once");

  /** Kinds of things of which nothing may show, not even that they are there. */
  private static final List<String> ADDED =
      List.of(
          "agreement",
          "budget",
          "client",
          "column",
          "entry",
          "handover section",
          "hero",
          "hours",
          "item",
          "kind",
          "licence",
          "limit",
          "lot",
          "maker",
          "material used",
          "measured",
          "paragraph",
          "paragraph in a quote",
          "photograph",
          "phrase in caption",
          "phrase in caption in the text",
          "phrase in cell",
          "phrase in footnote",
          "phrase in heading",
          "phrase in paragraph",
          "post",
          "price",
          "rate",
          "release",
          "request",
          "row",
          "scale",
          "stage",
          "statement",
          "subject",
          "table",
          "weighed");

  private final Map<String, Integer> hits = new ConcurrentHashMap<>();

  /** A secret of which a note may show; the twin has another one there. */
  void changed(String place) {
    hits.merge("changed " + place, 1, Integer::sum);
  }

  /** A secret of which nothing may show; the twin may have none there. */
  void added(String place) {
    hits.merge("added " + place, 1, Integer::sum);
  }

  /** The cells that were never hit, of all that there are. */
  SortedSet<String> missing() {
    return Stream.concat(
            CHANGED.stream().map(c -> "changed " + c), ADDED.stream().map(a -> "added " + a))
        .filter(cell -> !hits.containsKey(cell))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** All cells with how often each was hit, one to a line. */
  String inWords() {
    return new TreeMap<>(hits)
        .entrySet().stream()
            .map(e -> e.getKey() + ": " + e.getValue() + "\n")
            .collect(Collectors.joining());
  }
}
