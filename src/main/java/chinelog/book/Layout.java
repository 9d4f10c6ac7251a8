package chinelog.book;

import java.util.Map;

/**
 * What laying out the pages once has shown, for writing them again.
 *
 * @param pages counted from the cover, by id
 * @param scales how much smaller plates are to be shown, by id, so that they fit onto the page
 *     before; between 0 and 1
 * @param later how many of the paragraphs that follow a plate are to stand before it, by id, so
 *     that they fill the page that has no room for it
 * @param count of the pages
 */
record Layout(
    Map<String, Integer> pages, Map<String, Double> scales, Map<String, Integer> later, int count) {
  static final Layout UNKNOWN = new Layout(Map.of(), Map.of(), Map.of(), 0);

  Layout with(Map<String, Integer> newPages) {
    return new Layout(newPages, scales, later, count);
  }

  /** Whether plates stand as they did then. */
  boolean isFittedLike(Layout other) {
    return scales.equals(other.scales) && later.equals(other.later);
  }
}
