package chinelog.pattern;

import chinelog.drawn.LineUse;
import chinelog.drawn.Spot;
import chinelog.drawn.Stroke;
import java.io.IOException;
import java.util.List;

/** The sheets to cut from, drawn small with the outlines of the parts on them. */
final class NestDrawing {

  private static final double GAP = 6;

  /** ISO 5455. */
  private static final int[] SCALES = {2, 5, 10, 20, 50, 100};

  private NestDrawing() {}

  /** Draws what finds room and tells the scale; 0 if nothing does. */
  static int draw(Pen pen, Nest nest, Extent room) throws IOException {
    for (int scale : SCALES) {
      double wide = nest.stock().lengthMm() / scale;
      double high = nest.stock().widthMm() / scale;
      int across = (int) Math.floor((room.width() + GAP) / (wide + GAP));
      int down = (int) Math.floor((room.height() + GAP) / (high + GAP));
      if (across > 0 && across * down >= nest.sheets()) {
        for (int i = 0; i < nest.sheets(); i++) {
          double left = room.left() + i % across * (wide + GAP);
          double bottom = room.top() - (i / across + 1) * (high + GAP) + GAP;
          sheet(pen, nest.cuts(), i + 1, left, bottom, scale);
          pen.furniture(Pen.NARROW);
          pen.box(new Extent(left, bottom, left + wide, bottom + high));
          pen.write(String.valueOf(i + 1), left + 1, bottom - 4.4, Pen.LETTERING, false);
        }
        return scale;
      }
    }
    return 0;
  }

  private static void sheet(
      Pen pen, List<Nest.Cut> cuts, int sheet, double left, double bottom, double scale)
      throws IOException {
    pen.ink();
    for (Nest.Cut cut : cuts) {
      if (cut.sheet() == sheet) {
        outline(pen, cut, left + cut.along() / scale, bottom + cut.across() / scale, scale);
      }
    }
  }

  private static void outline(Pen pen, Nest.Cut cut, double left, double bottom, double scale)
      throws IOException {
    Extent own = Extent.ofCuts(cut.part());
    for (Stroke stroke : cut.part().strokes()) {
      if (stroke.line() != LineUse.CUT) {
        continue;
      }
      List<Spot> points = stroke.points();
      int n = points.size();
      for (int i = stroke.closed() ? 0 : 1; i < n; i++) {
        Spot a = points.get((i + n - 1) % n);
        Spot b = points.get(i);
        pen.line(
            left + (a.x() - own.left()) / scale,
            bottom + (a.y() - own.bottom()) / scale,
            left + (b.x() - own.left()) / scale,
            bottom + (b.y() - own.bottom()) / scale);
      }
    }
  }
}
