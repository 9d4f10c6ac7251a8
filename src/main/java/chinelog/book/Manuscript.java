package chinelog.book;

import java.time.LocalDate;
import java.util.Locale;

/**
 * Pages ready to be printed.
 *
 * @param date of the edition; the only date that goes into the file
 * @param underMark begins the mark in the head of a page that shows what is under an agreement
 */
record Manuscript(
    String html,
    PictureStore pictures,
    Locale locale,
    LocalDate date,
    Trim trim,
    String underMark) {

  /** The same with small pictures, whose sizes on the page are written with them. */
  Manuscript small() {
    return new Manuscript(html, pictures.small(), locale, date, trim, underMark);
  }
}
