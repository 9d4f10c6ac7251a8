package chinelog.talk;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;

/**
 * A caption: one line or two, each of at most 42 characters.
 *
 * @param lines of text
 */
record Caption(List<String> lines) {

  static final int LINE = 42;
  private static final int LINES = 2;

  /** Costs of ending a caption, by where it ends, and of having one more. */
  private static final int ONE_MORE = 40;

  private static final int IN_A_CLAUSE = 30;
  private static final double RAGGED = 0.04;
  private static final int BRIEF = 20;
  private static final int BRIEF_LENGTH = 18;
  private static final Pattern CLAUSE_END = Pattern.compile(".*[.,;:!?…–—)\u201d»]");

  Caption {
    lines = List.copyOf(lines);
  }

  int length() {
    return lines.stream().mapToInt(l -> (int) l.codePoints().count()).sum() + lines.size() - 1;
  }

  /** What it takes to read it. */
  long leastMs() {
    return Math.max(
        Timing.LEAST_MS, (length() * 1000L + Timing.READ_A_SECOND - 1) / Timing.READ_A_SECOND);
  }

  /** A sentence in captions, split where clauses end if that can be. */
  static List<Caption> of(String sentence) {
    List<String> words = words(sentence);
    int n = words.size();
    long[] cost = new long[n + 1];
    int[] from = new int[n + 1];
    Arrays.fill(cost, Long.MAX_VALUE);
    cost[0] = 0;
    for (int end = 1; end <= n; end++) {
      for (int start = end - 1; start >= 0; start--) {
        List<String> part = words.subList(start, end);
        if (!fits(part)) {
          break;
        }
        long sum = cost[start] + ONE_MORE + ending(part, end == n);
        if (sum < cost[end]) {
          cost[end] = sum;
          from[end] = start;
        }
      }
    }
    List<Caption> captions = new ArrayList<>();
    for (int end = n; end > 0; end = from[end]) {
      captions.add(0, new Caption(lines(words.subList(from[end], end))));
    }
    return captions;
  }

  /** Lines of a text that is read aloud, of at most so many characters, that end as clauses do. */
  static List<String> lines(String text, int most) {
    List<String> words = words(text);
    int n = words.size();
    double[] cost = new double[n + 1];
    int[] from = new int[n + 1];
    Arrays.fill(cost, Double.MAX_VALUE);
    cost[0] = 0;
    for (int end = 1; end <= n; end++) {
      for (int start = end - 1; start >= 0; start--) {
        String line = String.join(" ", words.subList(start, end));
        if (line.length() > most && start < end - 1) {
          break;
        }
        double room = most - line.length();
        boolean endsWell = end == n || CLAUSE_END.matcher(line).matches();
        double sum = cost[start] + RAGGED * room * room + ONE_MORE + (endsWell ? 0 : IN_A_CLAUSE);
        if (sum < cost[end]) {
          cost[end] = sum;
          from[end] = start;
        }
      }
    }
    List<String> lines = new ArrayList<>();
    for (int end = n; end > 0; end = from[end]) {
      lines.add(0, String.join(" ", words.subList(from[end], end)));
    }
    return lines;
  }

  private static int ending(List<String> part, boolean isLast) {
    int length = part.stream().mapToInt(w -> w.length() + 1).sum() - 1;
    int brief = length < BRIEF_LENGTH ? BRIEF : 0;
    boolean isClause = CLAUSE_END.matcher(part.get(part.size() - 1)).matches();
    return brief + (isLast || isClause ? 0 : IN_A_CLAUSE);
  }

  /** Words, such as are longer than a line in pieces; a figure stays with its unit. */
  private static List<String> words(String sentence) {
    List<String> words = new ArrayList<>();
    for (String word : sentence.strip().split("[\\s&&[^\u00a0\u202f]]+")) {
      String rest = word;
      while (rest.length() > LINE) {
        int cut = rest.offsetByCodePoints(0, Math.min(LINE, rest.codePointCount(0, rest.length())));
        if (cut >= rest.length()) {
          break;
        }
        words.add(rest.substring(0, cut));
        rest = rest.substring(cut);
      }
      words.add(rest);
    }
    return words;
  }

  private static boolean fits(List<String> part) {
    return !lines(part).isEmpty();
  }

  /** None if they do not fit. */
  private static List<String> lines(List<String> part) {
    String whole = String.join(" ", part);
    if (whole.length() <= LINE) {
      return List.of(whole);
    }
    List<String> best = List.of();
    long least = Long.MAX_VALUE;
    for (int cut = 1; cut < part.size() && LINES > 1; cut++) {
      String first = String.join(" ", part.subList(0, cut));
      String second = String.join(" ", part.subList(cut, part.size()));
      if (first.length() > LINE || second.length() > LINE) {
        continue;
      }
      long uneven = Math.abs(first.length() - second.length());
      long clause = CLAUSE_END.matcher(first).matches() ? 0 : 12;
      if (uneven + clause < least) {
        least = uneven + clause;
        best = List.of(first, second);
      }
    }
    return best;
  }
}
