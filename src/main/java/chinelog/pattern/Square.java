package chinelog.pattern;

import java.io.IOException;

/** The square on every sheet that tells whether the printer kept the size. */
final class Square {

  /** Of its sides, in mm. */
  static final double SIDE = 100;

  /** From the lower left corner of what is drawn on. */
  static final double INSET = 4;

  /** The least height of what is drawn on. */
  static final double NEEDS = INSET + SIDE + 10;

  private static final double FOUR_INCHES = 101.6;
  private static final double TICK = 3;

  private Square() {}

  static void draw(Pen pen) throws IOException {
    double near = INSET;
    double far = INSET + SIDE;
    pen.furniture(Pen.NARROW);
    pen.box(new Extent(near, near, far, far));
    double inches = INSET + FOUR_INCHES;
    pen.line(inches, near, inches, near + TICK);
    pen.line(far, near, inches + 2, near);
    pen.line(near, inches, near + TICK, inches);
    pen.line(near, far, near, inches + 2);
    pen.write("100 mm", far - 20, near + 1.2, Pen.LETTERING, false);
    pen.write("4 in", inches + 1, near + 1.2, Pen.LETTERING, false);
    pen.write("100 mm", near + 5.2, far - 20, Pen.LETTERING, true);
    pen.write("4 in", near + 5.2, inches + 1, Pen.LETTERING, true);
  }
}
