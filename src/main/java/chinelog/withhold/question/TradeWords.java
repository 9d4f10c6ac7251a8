package chinelog.withhold.question;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Words that say what a figure is, so that one without its own name is known by those beside it.
 */
final class TradeWords {

  private static final List<Set<String>> THINGS =
      CommonWords.Resource.lines("trade-words.txt").stream()
          .map(l -> new HashSet<>(List.of(l.split(" "))))
          .map(Set::copyOf)
          .toList();

  /** Words that say nothing of what a figure is. */
  private static final Set<String> EMPTY =
      Set.of(
          "full", "size", "model", "hull", "built", "form", "over", "all", "total", "mean", "the",
          "and", "for", "with", "from", "planned", "figure", "boat", "ship", "ganze", "grosse",
          "table", "cell", "price", "quoted", "mass", "length");

  private static final int LEAST = 3;

  private TradeWords() {}

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
    for (Set<String> thing : THINGS) {
      if (own.stream().anyMatch(thing::contains)) {
        near.addAll(thing);
      }
    }
    near.remove("over");
    return near;
  }
}
