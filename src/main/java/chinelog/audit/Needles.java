package chinelog.audit;

import chinelog.problem.Sentence;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** Many folded texts that are looked for in one pass (Karp and Rabin's rolling hash). */
final class Needles {

  /** Fewer letters than this cannot be told from ordinary words. */
  static final int LEAST = 5;

  /** A text as short as this is found only as whole words. */
  private static final int BOUNDED = 11;

  /** A text as long as this is found even if cells or paragraphs end inside it. */
  private static final int UNBOUND = 20;

  private static final int LONG_ANCHOR = 12;

  private final Anchors brief = new Anchors(LEAST);
  private final Anchors longer = new Anchors(LONG_ANCHOR);
  private final Set<Needle> known = new LinkedHashSet<>();

  /**
   * A text looked for.
   *
   * @param letters folded, at least {@link #LEAST}
   * @param what it is, for the private report
   */
  record Needle(String letters, Sentence what) {}

  void add(Needle needle) {
    if (needle.letters.length() >= LEAST && known.add(needle)) {
      (needle.letters.length() >= LONG_ANCHOR ? longer : brief).add(needle);
    }
  }

  int size() {
    return known.size();
  }

  /** What is looked for. */
  Stream<String> letters() {
    return known.stream().map(Needle::letters);
  }

  /** Those of these that do not occur in {@code text}. */
  Needles without(Folded text) {
    Set<String> there = new LinkedHashSet<>();
    find(text, LEAST).forEach(n -> there.add(n.letters));
    Needles rest = new Needles();
    known.stream().filter(n -> !there.contains(n.letters)).forEach(rest::add);
    return rest;
  }

  /** Those of these that are not of a kind. */
  Needles without(Predicate<Needle> kind) {
    Needles rest = new Needles();
    known.stream().filter(kind.negate()).forEach(rest::add);
    return rest;
  }

  /** Those that occur in {@code text} and have at least so many letters, in order of place. */
  List<Needle> find(Folded text, int least) {
    Set<Needle> found = new LinkedHashSet<>();
    brief.scan(text, least, found);
    longer.scan(text, least, found);
    return new ArrayList<>(found);
  }

  private static boolean isAt(Folded text, int at, Needle needle) {
    String n = needle.letters;
    int end = at + n.length();
    return text.letters().startsWith(n, at)
        && (n.length() > BOUNDED || text.isWhole(at, end))
        && (n.length() >= UNBOUND || text.isUnbroken(at, end));
  }

  /** Needles by the hash of their first letters. */
  private static final class Anchors {
    private static final long BASE = 1_099_511_628_211L;

    /** There are some thousand needles. */
    private static final int SIEVE_BITS = 18;

    private final int length;
    private final long highest;
    private final Map<Long, List<Needle>> byHash = new HashMap<>();
    private final BloomFilter sieve = new BloomFilter(SIEVE_BITS);

    Anchors(int length) {
      this.length = length;
      long power = 1;
      for (int i = 1; i < length; i++) {
        power *= BASE;
      }
      this.highest = power;
    }

    void add(Needle needle) {
      long hash = 0;
      for (int i = 0; i < length; i++) {
        hash = hash * BASE + needle.letters.charAt(i);
      }
      sieve.add(hash);
      byHash.computeIfAbsent(hash, h -> new ArrayList<>()).add(needle);
    }

    void scan(Folded text, int least, Set<Needle> found) {
      if (byHash.isEmpty() || text.length() < length) {
        return;
      }
      char[] letters = text.letters().toCharArray();
      long hash = 0;
      for (int i = 0; i < letters.length; i++) {
        if (i >= length) {
          hash -= letters[i - length] * highest;
        }
        hash = hash * BASE + letters[i];
        if (i >= length - 1 && sieve.mayHold(hash)) {
          for (Needle needle : byHash.getOrDefault(hash, List.of())) {
            if (needle.letters.length() >= least && isAt(text, i - length + 1, needle)) {
              found.add(needle);
            }
          }
        }
      }
    }
  }
}
