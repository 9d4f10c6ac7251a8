package chinelog.book.page;

import com.openhtmltopdf.render.PageBox;

/** Where on the sheet something stands that the layout has put on a page, in points. */
record PagePlace(Trim trim, double bleedMm) {

  private static final float POINTS_PER_MM = 72 / 25.4f;

  /** The renderer counts 20 dots to a pixel of 1/96 in. */
  private static final float DOTS_PER_POINT = 20 * 96 / 72f;

  static float points(int dots) {
    return dots / DOTS_PER_POINT;
  }

  /**
   * The left side of the text.
   *
   * @param page from 0, the cover
   */
  float textLeftPt(int page) {
    boolean isRight = page % 2 == 0;
    return (float)
        (((isRight ? trim.margins.innerMm() : trim.margins.outerMm()) + bleedMm) * POINTS_PER_MM);
  }

  /** From the sheet's left side to what begins so many dots from the text's. */
  float leftPt(int page, int dots) {
    return textLeftPt(page) + points(dots);
  }

  /** From the sheet's top to what begins so many dots from the top of all pages. */
  float fromTopPt(PageBox page, int dots) {
    return textTopPt() + points(dots - page.getTop());
  }

  /** From the sheet's top to the text's. */
  float textTopPt() {
    return (float) ((trim.margins.topMm() + bleedMm) * POINTS_PER_MM);
  }
}
