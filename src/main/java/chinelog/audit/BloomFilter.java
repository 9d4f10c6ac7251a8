package chinelog.audit;

/**
 * Answers quickly whether a hash was surely not added (Bloom, Space/Time Trade-offs in Hash Coding
 * with Allowable Errors, CACM 13 (7), 1970: here with two bits for each).
 */
final class BloomFilter {

  private static final int BITS = 22;

  private final long[] words = new long[1 << (BITS - 6)];

  void add(long hash) {
    int first = first(hash);
    int second = second(hash);
    words[first >>> 6] |= 1L << first;
    words[second >>> 6] |= 1L << second;
  }

  boolean mayHold(long hash) {
    int first = first(hash);
    if ((words[first >>> 6] & 1L << first) == 0) {
      return false;
    }
    int second = second(hash);
    return (words[second >>> 6] & 1L << second) != 0;
  }

  private static int first(long hash) {
    return (int) ((hash * 0x9E3779B97F4A7C15L) >>> (64 - BITS));
  }

  private static int second(long hash) {
    return (int) ((hash * 0xC2B2AE3D27D4EB4FL) >>> (64 - BITS));
  }
}
