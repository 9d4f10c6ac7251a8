package chinelog.book.page;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What laying the pages out once has shown.
 *
 * @param pages counted from the cover, by id
 * @param scales of plates that are shown smaller than usual, by id
 * @param later how many of the paragraphs that follow a plate are to stand before it, by id, so
 *     that they fill the page that has no room for it
 * @param parted ids of short tables that may go on on the next page
 * @param lifted how many millimetres what stands at the head of a page is to stand higher, by id:
 *     white that was meant to part it from what is now on the page before
 */
public record Layout(
    Map<String, Integer> pages,
    Map<String, Double> scales,
    Map<String, Integer> later,
    Set<String> parted,
    Map<String, Double> lifted) {

  /** Names what is lifted if white from the page before is left above it. */
  public static final String LIFT_ATTRIBUTE = "data-lift";

  public static final Layout UNKNOWN = new Layout(Map.of(), Map.of(), Map.of(), Set.of(), Map.of());

  /** What may be done about white space. */
  enum Kind {
    /** Show a plate at a part of its usual size; 1 for the usual. */
    SCALE,
    /** Let a plate come after so many of the paragraphs that follow it. */
    LATER,
    /** Let a table go on on the next page; 0 to keep it on one. */
    PART,
    /** Let what begins a page stand so many millimetres higher. */
    LIFT
  }

  /** One thing done. */
  record Change(String id, Kind kind, double by) {}

  /**
   * How pages look that were laid out.
   *
   * @param pages counted from the cover, by id
   * @param places by id, in dots from the head of the body's first page
   * @param before how many pages stand before the body
   * @param white how much of each page is left white, the whiter the worse; 0 for nothing
   * @param measures of all that stands on them
   */
  record Look(
      Map<String, Integer> pages,
      Map<String, Integer> places,
      int before,
      List<Double> white,
      String measures) {

    /** Of all pages. */
    double allWhite() {
      return whiteUntil(white.size());
    }

    /** Of so many pages from the first. */
    double whiteUntil(int end) {
      return white.stream().limit(end).mapToDouble(w -> w).sum();
    }
  }

  Layout with(Map<String, Integer> newPages) {
    return new Layout(newPages, scales, later, parted, lifted);
  }

  Layout with(List<Change> changes) {
    Map<String, Double> newScales = new TreeMap<>(scales);
    Map<String, Integer> newLater = new TreeMap<>(later);
    Set<String> newParted = new TreeSet<>(parted);
    Map<String, Double> newLifted = new TreeMap<>(lifted);
    for (Change change : changes) {
      String id = change.id;
      switch (change.kind) {
        case SCALE -> newScales.compute(id, (i, was) -> change.by == 1 ? null : change.by);
        case LATER -> newLater.compute(id, (i, was) -> change.by == 0 ? null : (int) change.by);
        case LIFT -> newLifted.put(id, change.by);
        case PART -> {
          newParted.remove(id);
          newParted.addAll(change.by == 0 ? Set.of() : Set.of(id));
        }
      }
    }
    return new Layout(pages, newScales, newLater, newParted, newLifted);
  }
}
