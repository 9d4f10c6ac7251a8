package chinelog.pattern;

import chinelog.drawn.LineUse;
import chinelog.drawn.Spot;
import chinelog.drawn.Stroke;
import chinelog.edition.Pattern;

/** An upright rectangle, in mm. */
record Extent(double left, double bottom, double right, double top) {

  private static final Extent NONE =
      new Extent(
          Double.POSITIVE_INFINITY,
          Double.POSITIVE_INFINITY,
          Double.NEGATIVE_INFINITY,
          Double.NEGATIVE_INFINITY);

  /** How far letters reach below their line. */
  private static final double BELOW = 0.35;

  /** All that belongs to a part, its lettering too. */
  static Extent of(Pattern pattern) {
    Extent box = NONE;
    for (Stroke stroke : pattern.strokes()) {
      for (Spot p : stroke.points()) {
        box = box.with(p.x(), p.y());
      }
    }
    for (Pattern.Note note : pattern.notes()) {
      box = box.with(of(note));
    }
    return box;
  }

  /** What is cut of a part, without its lettering. */
  static Extent ofCuts(Pattern pattern) {
    Extent box = NONE;
    for (Stroke stroke : pattern.strokes()) {
      for (Spot p : stroke.points()) {
        box = stroke.line() == LineUse.CUT ? box.with(p.x(), p.y()) : box;
      }
    }
    return box;
  }

  static Extent of(Pattern.Note note) {
    double width = note.height() * note.text().codePoints().mapToDouble(Extent::width).sum();
    return new Extent(
        note.at().x(),
        note.at().y() - BELOW * note.height(),
        note.at().x() + width,
        note.at().y() + 1.1 * note.height());
  }

  /** Of a letter, as part of the height of capitals, on the safe side. */
  private static double width(int letter) {
    if (Character.isDigit(letter)) {
      return 0.78;
    }
    if ("mwMW%@\u2014".indexOf(letter) >= 0) {
      return 1.35;
    }
    return " ilIjtfr.,:;'\u2019|".indexOf(letter) >= 0
        ? 0.55
        : Character.isLowerCase(letter) ? 0.85 : 1.05;
  }

  private Extent with(double x, double y) {
    return new Extent(Math.min(left, x), Math.min(bottom, y), Math.max(right, x), Math.max(top, y));
  }

  private Extent with(Extent other) {
    return with(other.left, other.bottom).with(other.right, other.top);
  }

  double width() {
    return right - left;
  }

  double height() {
    return top - bottom;
  }

  Extent turned() {
    return new Extent(-top, left, -bottom, right);
  }

  Extent movedBy(double dx, double dy) {
    return new Extent(left + dx, bottom + dy, right + dx, top + dy);
  }

  boolean holds(Extent other) {
    return other.left >= left - 1e-9
        && other.right <= right + 1e-9
        && other.bottom >= bottom - 1e-9
        && other.top <= top + 1e-9;
  }
}
