package chinelog.log.records;

import chinelog.label.Label;
import chinelog.problem.Place;
import java.util.List;

/**
 * A drawing, always under an agreement.
 *
 * @param path such as {@code sheets/lines.pdf}
 * @param rest what all pages are under that are not named
 * @param pages those under agreements of their own, by number
 */
public record Sheet(String path, String title, Label rest, List<Page> pages, Place place) {

  public Sheet {
    pages = List.copyOf(pages);
  }

  /**
   * A page under agreements of its own.
   *
   * @param number from 1
   */
  public record Page(int number, Label label) {}

  /** What the whole of it is under: all that any of its pages is. */
  public Label label() {
    Label all = rest;
    for (Page page : pages) {
      all = all.join(page.label());
    }
    return all;
  }

  /** What a page is under. */
  public Label label(int number) {
    return pages.stream()
        .filter(p -> p.number() == number)
        .findFirst()
        .map(Page::label)
        .orElse(rest);
  }

  /** What a name such as {@code sheets/lines.pdf#2} is under; without a page, the whole. */
  public Label label(String name) {
    return name.matches(".*#[1-9][0-9]{0,5}")
        ? label(Integer.parseInt(name.substring(name.lastIndexOf('#') + 1)))
        : label();
  }
}
