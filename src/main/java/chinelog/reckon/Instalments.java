package chinelog.reckon;

import chinelog.log.records.PostLength;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Divides a series into instalments of about equal length, with breaks only between entries. */
public final class Instalments {

  /** About five minutes of silent reading. */
  private static final int WORDS_OF_ONE = 1190;

  /** However short, more evenings than a week has make a long post. */
  private static final int ENTRIES_OF_ONE = 7;

  private Instalments() {}

  /**
   * The number of entries in each instalment of a series: as even as whole entries allow, or, where
   * a length is wanted, as near to it.
   *
   * @param wordsOfEntries of each entry, in the order told; none below 0
   * @param wanted null where the maker does not say
   */
  public static List<Integer> of(List<Integer> wordsOfEntries, @Nullable PostLength wanted) {
    return wanted == null
        ? divide(wordsOfEntries, suggest(wordsOfEntries))
        : towards(wordsOfEntries, words(wanted));
  }

  /** The words of an instalment of that length. */
  private static int words(PostLength length) {
    BigDecimal words =
        switch (length.measure()) {
          case WORDS -> length.much();
          case MINUTES -> length.much().multiply(BigDecimal.valueOf(Pace.SILENT.wordsPerMinute()));
        };
    return words.setScale(0, RoundingMode.HALF_UP).intValue();
  }

  /**
   * Of all divisions, the one whose lengths have the least sum of squared differences from {@code
   * wanted}, later breaks being taken where two are equal.
   */
  private static List<Integer> towards(List<Integer> wordsOfEntries, int wanted) {
    int n = wordsOfEntries.size();
    double[] best = new double[n + 1];
    int[] from = new int[n + 1];
    for (int end = 1; end <= n; end++) {
      best[end] = Double.POSITIVE_INFINITY;
      double length = 0;
      for (int begin = end - 1; begin >= 0; begin--) {
        length += wordsOfEntries.get(begin);
        double off = length - wanted;
        double sum = best[begin] + off * off;
        if (sum < best[end]) {
          best[end] = sum;
          from[end] = begin;
        }
      }
    }
    List<Integer> sizes = new ArrayList<>();
    for (int end = n; end > 0; end = from[end]) {
      sizes.add(0, end - from[end]);
    }
    return List.copyOf(sizes);
  }

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
