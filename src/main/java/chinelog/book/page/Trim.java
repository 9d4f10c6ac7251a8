package chinelog.book.page;

import chinelog.edition.Edition.Paper;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * The size of a page once cut, with its margins, in millimetres; left and right pages mirror each
 * other.
 */
public enum Trim {
  A4(210, 297, new Margins(26, 30, 31, 36)),
  LETTER(215.9, 279.4, new Margins(25, 28, 33, 39)),
  A5(148, 210, new Margins(17, 20, 18, 21)),
  HALF_LETTER(139.7, 215.9, new Margins(17, 20, 17, 19));

  /** So much is printed beyond the cut where a picture runs off the page: common practice. */
  public static final double BLEED_MM = 3;

  /** A box exactly as high as its page spills a sliver onto the next. */
  private static final double SLIVER_MM = 0.03;

  public final double widthMm;
  public final double heightMm;
  public final Margins margins;

  /** What stays white around the text, but for head and foot. */
  public record Margins(double topMm, double bottomMm, double innerMm, double outerMm) {}

  Trim(double widthMm, double heightMm, Margins margins) {
    this.widthMm = widthMm;
    this.heightMm = heightMm;
    this.margins = margins;
  }

  public static Trim ofBook(Paper paper) {
    return switch (paper) {
      case A4 -> A4;
      case LETTER -> LETTER;
    };
  }

  /** Half of the book's. */
  public static Trim ofBooklet(Paper paper) {
    return switch (paper) {
      case A4 -> A5;
      case LETTER -> HALF_LETTER;
    };
  }

  public double textWidthMm() {
    return widthMm - margins.innerMm() - margins.outerMm();
  }

  public double textHeightMm() {
    return heightMm - margins.topMm() - margins.bottomMm();
  }

  /**
   * The values a style sheet may name, such as {@code ${page-width}}.
   *
   * @param bleedMm beyond the cut on every side; 0 for none
   */
  public Map<String, String> values(double bleedMm) {
    Map<String, String> values = new TreeMap<>();
    values.put("page-width", mm(widthMm + 2 * bleedMm));
    values.put("page-height", mm(heightMm + 2 * bleedMm));
    values.put("full-height", mm(heightMm + 2 * bleedMm - SLIVER_MM));
    values.put("margin-top", mm(margins.topMm() + bleedMm));
    values.put("margin-bottom", mm(margins.bottomMm() + bleedMm));
    values.put("margin-inner", mm(margins.innerMm() + bleedMm));
    values.put("margin-outer", mm(margins.outerMm() + bleedMm));
    values.put("text-width", mm(textWidthMm()));
    values.put("text-height", mm(textHeightMm()));
    return values;
  }

  public static String mm(double value) {
    return String.format(Locale.ROOT, "%.2fmm", value);
  }
}
