package chinelog.pattern;

import chinelog.edition.Patterns;

/**
 * A sheet of paper and what of it is drawn on. The drawn-on part is in mm as they come out of the
 * printer; what the maker's printer makes of 100 mm is corrected for.
 *
 * @param widthMm of the sheet
 * @param heightMm of the sheet
 * @param across what a millimetre of the drawing takes up on the sheet, across
 * @param up the same, up the sheet
 */
record PaperSize(double widthMm, double heightMm, double across, double up) {

  /** What household printers leave white, in mm. */
  static final double MARGIN = 8;

  /** For the title at the foot. */
  static final double FOOT = 9;

  /** The longest sheet off a roll: a page of PDF has at most 14,400 points. */
  private static final double LONGEST = 5000;

  static PaperSize of(Patterns patterns) {
    return new PaperSize(
        patterns.widthMm(),
        patterns.heightMm() > 0 ? patterns.heightMm() : LONGEST,
        100 / patterns.acrossMm(),
        100 / patterns.upMm());
  }

  /** The part that is drawn on, in mm as printed, its corner at 0, 0. */
  Extent area() {
    return new Extent(0, 0, (widthMm - 2 * MARGIN) / across, (heightMm - 2 * MARGIN - FOOT) / up);
  }

  /** As high as what is drawn on it, so that a roll is not wasted. */
  PaperSize cutTo(double drawnMm) {
    return new PaperSize(widthMm, Math.ceil(drawnMm * up + 2 * MARGIN + FOOT), across, up);
  }
}
