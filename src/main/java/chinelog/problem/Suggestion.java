package chinelog.problem;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds the known word that a misspelt one was most likely meant to be. */
public final class Suggestion {

  /** Beyond this nothing was misspelt; comparing would only take long. */
  private static final int LONGEST = 100;

  private Suggestion() {}

  /**
   * The known word nearest to {@code word}, if it lies within a third of its length (at least two
   * edits: insert, delete, replace, or swap neighbours); or the one of which it is the first part,
   * as "hull" of "hull-form".
   */
  public static Optional<String> findNearest(String word, Collection<String> known) {
    if (word.length() > LONGEST) {
      return Optional.empty();
    }
    int most = Math.max(2, word.length() / 3);
    String wanted = word.toLowerCase(Locale.ROOT);
    return known.stream()
        .filter(k -> edits(wanted, k) <= most)
        .min(
            Comparator.comparingInt((String k) -> edits(wanted, k))
                .thenComparing(Comparator.naturalOrder()));
  }

  /** One edit for what is missing after a first part. */
  private static int edits(String wanted, String known) {
    String word = known.toLowerCase(Locale.ROOT);
    return word.startsWith(wanted + "-") ? 1 : distance(wanted, word);
  }

  /** A remedy sentence: the nearest word if there is one, else the whole list. */
  public static CharSequence remedy(String word, Collection<String> known) {
    if (known.isEmpty()) {
      return "Remove it; there is nothing of that kind in this log.";
    }
    return findNearest(word, known)
        .map(Suggestion::of)
        .orElseGet(
            () ->
                Sentence.of(
                    "Write one of: {0}.", String.join(", ", known.stream().sorted().toList())));
  }

  /** Asks whether that word was meant. */
  public static Sentence of(String known) {
    return Sentence.of("Did you mean \"{0}\"?", known);
  }

  /**
   * How many edits lie between two words: insert, delete, replace, or swap neighbours, each part
   * being edited once at most.
   */
  public static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          d[i][j] = i + j;
          continue;
        }
        int replace = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        d[i][j] = Math.min(replace, Math.min(d[i - 1][j], d[i][j - 1]) + 1);
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }
}
