package chinelog.withhold.question;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Words that say what a figure is, so that one without its own name is known by those beside it.
 */
final class TradeWords {

  /** The words for the same things as a word, by that word. */
  private static final Map<String, Set<String>> ALIKE = alike();

  /** Words that say nothing of what a figure is. */
  private static final Set<String> EMPTY =
      Set.of(
          "full", "size", "model", "hull", "built", "form", "over", "all", "total", "mean", "the",
          "and", "for", "with", "from", "planned", "figure", "boat", "ship", "ganze", "grosse",
          "table", "cell", "price", "quoted", "mass", "length");

  private static final int LEAST = 3;

  /** By which one and several of a thing differ, in the languages of a log. */
  private static final List<String> ENDS = List.of("s", "es", "n", "en", "e");

  private TradeWords() {}

  private static Map<String, Set<String>> alike() {
    Map<String, Set<String>> alike = new HashMap<>();
    for (String line : CommonWords.Resource.lines("trade-words.txt")) {
      List<String> thing = List.of(line.split(" "));
      thing.forEach(word -> alike.computeIfAbsent(word, w -> new HashSet<>()).addAll(thing));
    }
    return alike;
  }

  /** The words of a title or name, and others for the same things. */
  static Set<String> near(String titles) {
    Set<String> own = new HashSet<>();
    for (Letters.Word word : Letters.words(titles.replace('_', ' ').replace('.', ' '))) {
      if (word.letters().length() >= LEAST
          && !word.letters().chars().allMatch(Character::isDigit)) {
        own.add(word.letters());
      }
    }
    Set<String> near = new HashSet<>(own);
    near.removeAll(EMPTY);
    for (String word : List.copyOf(near)) {
      for (String end : ENDS) {
        near.add(word + end);
        if (word.endsWith(end) && word.length() - end.length() >= LEAST) {
          near.add(word.substring(0, word.length() - end.length()));
        }
      }
    }
    for (String word : own) {
      near.addAll(ALIKE.getOrDefault(word, Set.of()));
    }
    near.remove("over");
    return near;
  }
}
