package chinelog.book;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What laying out the pages once has shown, for writing them again.
 *
 * @param pages counted from the cover, by id
 * @param scales how much smaller plates are to be shown, by id, so that they fit onto the page
 *     before; between 0 and 1
 * @param later how many of the paragraphs that follow a plate are to stand before it, by id, so
 *     that they fill the page that has no room for it
 */
record Layout(Map<String, Integer> pages, Map<String, Double> scales, Map<String, Integer> later) {
  static final Layout UNKNOWN = new Layout(Map.of(), Map.of(), Map.of());

  /** One plate shown smaller, or later. */
  record Change(String id, double scale, int later) {}

  /**
   * How pages look that were laid out.
   *
   * @param pages counted from the cover, by id
   * @param changes that might make them look better, in the order of the pages; those of a list
   *     belong together
   * @param white how much of the pages is left white, the whiter a page the worse; 0 for nothing
   * @param count of the pages
   */
  record Look(Map<String, Integer> pages, List<List<Change>> changes, double white, int count) {}

  Layout with(Map<String, Integer> newPages) {
    return new Layout(newPages, scales, later);
  }

  /** What was done to single plates, for trying each without it. */
  List<List<Change>> undone() {
    Set<String> ids = new TreeSet<>(scales.keySet());
    ids.addAll(later.keySet());
    return ids.stream().map(id -> List.of(new Change(id, 1, 0))).toList();
  }

  Layout with(List<Change> changes) {
    Map<String, Double> newScales = new TreeMap<>(scales);
    Map<String, Integer> newLater = new TreeMap<>(later);
    for (Change change : changes) {
      if (change.scale == 1) {
        newLater.put(change.id, change.later);
        newScales.remove(change.id);
      } else {
        newScales.put(change.id, change.scale);
      }
    }
    return new Layout(pages, newScales, newLater);
  }
}
