package chinelog.audit;

/**
 * Answers quickly whether a hash was surely not added (Bloom, Space/Time Trade-offs in Hash Coding
 * with Allowable Errors, CACM 13 (7), 1970: here with two bits for each).
 */
final class BloomFilter {

  private final int bits;
  private final long[] words;

  /**
   * @param bits as a power of two, 6 or more: small enough to stay in the processor's cache, and
   *     large enough for most bits to stay unset
   */
  BloomFilter(int bits) {
    this.bits = bits;
    this.words = new long[1 << (bits - 6)];
  }

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

  private int first(long hash) {
    return (int) ((hash * 0x9E3779B97F4A7C15L) >>> (64 - bits));
  }

  private int second(long hash) {
    return (int) ((hash * 0xC2B2AE3D27D4EB4FL) >>> (64 - bits));
  }
}
