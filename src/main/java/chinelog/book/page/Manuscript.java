package chinelog.book.page;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;

/**
 * Pages ready to be printed.
 *
 * @param date of the edition; the only date that goes into the file
 * @param underMark begins the mark in the head of a page that shows what is under an agreement
 * @param slug for the printing house, outside of what is cut
 */
public record Manuscript(
    String html,
    PictureStore pictures,
    Locale locale,
    LocalDate date,
    Trim trim,
    String underMark,
    Slug slug) {

  /**
   * What is told outside of what is cut.
   *
   * @param foldsMm where the paper is folded, from its left edge once cut
   * @param words may be empty
   */
  public record Slug(List<Double> foldsMm, String words) {
    public static final Slug NONE = new Slug(List.of(), "");
  }

  /** Names, separated by {@code |}, of the agreements that an element is under. */
  public static final String UNDER_ATTRIBUTE = "data-under";

  /** The same with small pictures, whose sizes on the page are written with them. */
  Manuscript small() {
    return new Manuscript(html, pictures.small(), locale, date, trim, underMark, slug);
  }

  /** All that it holds, pictures and all, to be told apart from others. */
  public List<Object> parts() {
    return List.of(html, pictures.byAddress(), locale, date, trim, underMark, slug);
  }
}
