package chinelog.publish;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/**
 * Finds English in a text that should be in another language: words such as "the" and "which",
 * which none of German, Dutch, French and Spanish has, unless the author wrote them beside the same
 * word.
 */
final class EnglishLeft {

  private static final Set<String> ENGLISH =
      Set.of(
          ("the and with which from to it that this than for are its their not where when whose"
                  + " out all what how has have been were each they must")
              .split(" "));

  /** English that a German sentence has by right: the titles of books and of data. */
  private static final List<String> NAMES =
      List.of(
          "Ship Stability for Masters and Mates",
          "Aircraft Weight and Balance Handbook",
          "Global Wood Density Database");

  private final Set<String> own;

  private EnglishLeft(Set<String> own) {
    this.own = own;
  }

  /**
   * @param own what the author wrote
   */
  static EnglishLeft besides(String own) {
    Set<String> pairs = pairs(own);
    // A title that runs on to the next line of a column is read with what stands beside it.
    NAMES.forEach(name -> pairs.addAll(pairs(name)));
    return new EnglishLeft(pairs);
  }

  private static Set<String> pairs(String text) {
    List<String> words = words(text);
    Set<String> pairs = new HashSet<>();
    for (int i = 1; i < words.size(); i++) {
      pairs.add(words.get(i - 1) + " " + words.get(i));
    }
    return pairs;
  }

  /** Each English word found, with what stands around it. */
  Set<String> in(String text) {
    String rest = text;
    for (String name : NAMES) {
      rest = rest.replaceAll(name.replace(" ", "\\s+"), " ");
    }
    List<String> words = words(rest);
    Set<String> found = new TreeSet<>();
    for (int i = 1; i + 1 < words.size(); i++) {
      String word = words.get(i);
      boolean isOwn =
          own.contains(words.get(i - 1) + " " + word)
              || own.contains(word + " " + words.get(i + 1));
      if (ENGLISH.contains(word) && !isOwn) {
        found.add(
            String.join(" ", words.subList(Math.max(0, i - 3), Math.min(words.size(), i + 4))));
      }
    }
    return found;
  }

  private static List<String> words(String text) {
    return Arrays.asList(text.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+"));
  }
}
