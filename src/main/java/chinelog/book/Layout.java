package chinelog.book;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

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
record Layout(
    Map<String, Integer> pages,
    Map<String, Double> scales,
    Map<String, Integer> later,
    Set<String> parted,
    Map<String, Double> lifted) {

  static final Layout UNKNOWN = new Layout(Map.of(), Map.of(), Map.of(), Set.of(), Map.of());

  /** What may be done about white space. */
  enum Kind {
    /** Show a plate at a part of its usual size; 1 for the usual. */
    SCALE,
    /** Let a plate come after so many of the paragraphs that follow it. */
    LATER,
    /** Let a table go on on the next page; 0 to keep it on one. */
    PART
  }

  /** One thing done. */
  record Change(String id, Kind kind, double by) {}

  /**
   * A page that is not full.
   *
   * @param page index of the page after it
   * @param ways to fill it, the least of them first; the changes of a way belong together
   */
  record Hole(int page, List<List<Change>> ways) {}

  /**
   * How pages look that were laid out.
   *
   * @param pages counted from the cover, by id
   * @param holes in the order of the pages
   * @param white how much of each page is left white, the whiter the worse; 0 for nothing
   * @param lifted as in {@link Layout}, in addition to what was lifted before
   */
  record Look(
      Map<String, Integer> pages,
      List<Hole> holes,
      List<Double> white,
      Map<String, Double> lifted) {

    int count() {
      return white.size();
    }

    /** Of all pages. */
    double allWhite() {
      return whiteUntil(count());
    }

    /** Of so many pages from the first. */
    double whiteUntil(int end) {
      return white.stream().limit(end).mapToDouble(w -> w).sum();
    }
  }

  Layout with(Map<String, Integer> newPages) {
    return new Layout(newPages, scales, later, parted, lifted);
  }

  Layout lifting(Map<String, Double> newLifted) {
    return new Layout(pages, scales, later, parted, newLifted);
  }

  /** The first page that a way changes. */
  int pageOf(List<Change> way) {
    return way.stream().mapToInt(c -> pages.getOrDefault(c.id, 0)).min().orElse(0);
  }

  /** What was done, for trying without each of it. */
  List<List<Change>> undone() {
    return Stream.of(
            scales.keySet().stream().map(id -> new Change(id, Kind.SCALE, 1)),
            later.keySet().stream().map(id -> new Change(id, Kind.LATER, 0)),
            parted.stream().map(id -> new Change(id, Kind.PART, 0)))
        .flatMap(s -> s)
        .map(List::of)
        .toList();
  }

  Layout with(List<Change> changes) {
    Map<String, Double> newScales = new TreeMap<>(scales);
    Map<String, Integer> newLater = new TreeMap<>(later);
    Set<String> newParted = new TreeSet<>(parted);
    for (Change change : changes) {
      String id = change.id;
      switch (change.kind) {
        case SCALE -> newScales.compute(id, (i, was) -> change.by == 1 ? null : change.by);
        case LATER -> newLater.compute(id, (i, was) -> change.by == 0 ? null : (int) change.by);
        case PART -> {
          newParted.remove(id);
          newParted.addAll(change.by == 0 ? Set.of() : Set.of(id));
        }
      }
    }
    return new Layout(pages, newScales, newLater, newParted, lifted);
  }
}
