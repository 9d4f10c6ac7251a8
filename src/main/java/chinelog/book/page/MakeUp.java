package chinelog.book.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Makes pages up from measured pieces as the renderer would, and finds by dynamic programming which
 * plates to show smaller or later and which tables to part, so that the least white is left at the
 * feet of the pages. After each piece, of all ways that end at about the same height of a page the
 * best is kept: what follows is the same for all of them.
 *
 * <p>Donald E. Knuth and Michael F. Plass, "Breaking paragraphs into lines", Software: Practice and
 * Experience 11 (1981), does so for lines; Plass's thesis "Optimal pagination techniques for
 * automatic typesetting systems" (Stanford, 1981) for pages.
 */
final class MakeUp {

  private MakeUp() {}

  /**
   * What a layout has shown.
   *
   * @param layout as it was laid out
   * @param until the last whose place was not as reckoned; from there on all is open
   * @param found the places of all such, in dots from the head of the body's first page
   * @param cost the white of the pages before that of the last
   */
  record Known(Layout layout, String until, Map<String, Integer> found, double cost) {}

  /**
   * Pages made up.
   *
   * @param layout with the pages counted from the cover
   * @param places of pieces, by id, in dots from the head of the body's first page
   */
  record Made(Layout layout, Map<String, Integer> places) {}

  /**
   * Finds the best way.
   *
   * @param known what a layout has shown; null for nothing
   */
  static Made best(Galley galley, @Nullable Known known) {
    List<Cursor> ends =
        new WaySearch(new Guide(known), galley.body()).ends(galley.body(), start(galley));
    Cursor best = ends.stream().min(Comparator.comparing(Cursor::costOfAll)).orElseThrow();
    List<Layout.Change> changes = new ArrayList<>();
    for (Cursor.Done done = best.done; done != null; done = done.before()) {
      changes.add(0, done.change());
    }
    Map<String, Integer> found = known == null ? Map.of() : known.found;
    return followed(galley, Layout.UNKNOWN.with(changes), found);
  }

  /** Makes the pages up as a layout says. */
  private static Made followed(Galley galley, Layout layout, Map<String, Integer> found) {
    Guide guide = new Guide(new Known(layout, "", found, 0));
    new WaySearch(guide, galley.body()).ends(galley.body(), start(galley));
    Map<String, Integer> pages = new TreeMap<>(galley.front());
    pages.put(PageNumbers.BODY, galley.pagesBefore() + 1);
    guide
        .allPlaces()
        .forEach((id, y) -> pages.put(id, galley.pagesBefore() + y / galley.pageDots() + 1));
    return new Made(layout.with(pages), guide.places());
  }

  private static Cursor start(Galley galley) {
    return new Cursor(galley.pageDots(), galley.noteDots());
  }
}
