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
  private static final double NO_ROOM = Double.POSITIVE_INFINITY;
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
    return cut(
            words(sentence),
            (sum, part, isLast) -> fits(part) ? sum + ONE_MORE + ending(part, isLast) : NO_ROOM)
        .stream()
        .map(part -> new Caption(lines(part)))
        .toList();
  }

  /** Lines of a text that is read aloud, of at most so many characters, that end as clauses do. */
  static List<String> lines(String text, int most) {
    return cut(
            words(text),
            (sum, part, isLast) -> {
              String line = String.join(" ", part);
              if (line.length() > most && part.size() > 1) {
                return NO_ROOM;
              }
              double room = most - line.length();
              boolean endsWell = isLast || CLAUSE_END.matcher(line).matches();
              return sum + RAGGED * room * room + ONE_MORE + (endsWell ? 0 : IN_A_CLAUSE);
            })
        .stream()
        .map(part -> String.join(" ", part))
        .toList();
  }

  private interface Cost {
    /** With a part more; {@link #NO_ROOM} for one that is too long, as all longer ones are. */
    double of(double sum, List<String> part, boolean isLast);
  }

  /** The parts, in order, that cost least together. */
  private static List<List<String>> cut(List<String> words, Cost cost) {
    int n = words.size();
    double[] least = new double[n + 1];
    int[] from = new int[n + 1];
    Arrays.fill(least, Double.MAX_VALUE);
    least[0] = 0;
    for (int end = 1; end <= n; end++) {
      for (int start = end - 1; start >= 0; start--) {
        double sum = cost.of(least[start], words.subList(start, end), end == n);
        if (sum == NO_ROOM) {
          break;
        }
        if (sum < least[end]) {
          least[end] = sum;
          from[end] = start;
        }
      }
    }
    List<List<String>> parts = new ArrayList<>();
    for (int end = n; end > 0; end = from[end]) {
      parts.add(0, words.subList(from[end], end));
    }
    return parts;
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
