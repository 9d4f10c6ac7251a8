package chinelog.log;

import chinelog.log.markdown.PartFinder;
import chinelog.log.records.NotePart;
import java.util.List;

/** Where in a note's text the parts stand that a mark may put under an agreement. */
public final class NoteParts {

  private NoteParts() {}

  /**
   * All headings, paragraphs and pictures, and those phrases that are marked, by where they begin;
   * what is around others comes before them.
   *
   * @param text below the keys of a note, with {@code \n} for line ends
   */
  public static List<NotePart> of(String text) {
    return PartFinder.find(text);
  }

  /**
   * How many stretches of emphasis and code and how many links and pictures a note's text has: a
   * bracket that cuts through one of them undoes it.
   */
  public static long stretches(String text) {
    return PartFinder.stretches(text);
  }
}
