package chinelog.reckon;

import java.util.ArrayList;
import java.util.List;

/** Divides a series into instalments of about equal length, with breaks only between entries. */
public final class Instalments {

  /** About five minutes of silent reading. */
  private static final int WORDS_OF_ONE = 1190;

  /** However short, more evenings than a week has make a long post. */
  private static final int ENTRIES_OF_ONE = 7;

  private Instalments() {}

  /**
   * How many instalments a series of so many words makes: of about five minutes' reading, and of
   * seven entries at most on an average.
   */
  public static int suggest(List<Integer> wordsOfEntries) {
    long words = wordsOfEntries.stream().mapToLong(w -> w).sum();
    long wanted = Math.max(1, Math.round((double) words / WORDS_OF_ONE));
    int entries = wordsOfEntries.size();
    long least = (entries + ENTRIES_OF_ONE - 1) / ENTRIES_OF_ONE;
    return (int) Math.min(Math.max(wanted, least), Math.max(1, entries));
  }

  /**
   * The number of entries in each instalment: of all divisions into {@code parts} (fewer if there
   * are fewer entries), the one whose lengths have the least sum of squares, earlier breaks being
   * taken where two are equal.
   *
   * @param wordsOfEntries of each entry, in the order told; none below 0
   */
  public static List<Integer> divide(List<Integer> wordsOfEntries, int parts) {
    int n = wordsOfEntries.size();
    int k = Math.min(parts, n);
    if (k <= 0) {
      return List.of();
    }
    long[] until = new long[n + 1];
    for (int i = 0; i < n; i++) {
      until[i + 1] = until[i] + wordsOfEntries.get(i);
    }
    // best[j][i]: least sum of squares for the first i entries in j parts; from: where its last
    // begins.
    double[][] best = new double[k + 1][n + 1];
    int[][] from = new int[k + 1][n + 1];
    for (int j = 0; j <= k; j++) {
      for (int i = 0; i <= n; i++) {
        best[j][i] = i == 0 && j == 0 ? 0 : Double.POSITIVE_INFINITY;
        for (int b = j - 1; j > 0 && b < i; b++) {
          double length = until[i] - until[b];
          double sum = best[j - 1][b] + length * length;
          if (sum < best[j][i]) {
            best[j][i] = sum;
            from[j][i] = b;
          }
        }
      }
    }
    List<Integer> sizes = new ArrayList<>();
    int end = n;
    for (int j = k; j > 0; j--) {
      sizes.add(0, end - from[j][end]);
      end = from[j][end];
    }
    return List.copyOf(sizes);
  }
}
