package chinelog.pattern;

import java.io.IOException;

/** What shows how a sheet joins its neighbours: where to cut, marks to lay it right, its name. */
final class Joins {

  private Joins() {}

  static void draw(Pen pen, PrintedSheet.Tile tile, Extent area) throws IOException {
    double half = tile.overlap() / 2;
    boolean left = tile.column() > 0;
    boolean right = tile.column() < tile.columns() - 1;
    boolean above = tile.row() > 0;
    boolean below = tile.row() < tile.rows() - 1;
    if (left) {
      upright(pen, half, area);
      pen.write(
          "\u2190 " + PrintedSheet.Tile.name(tile.column() - 1, tile.row()),
          tile.overlap() + 1,
          area.top() * 0.62,
          Pen.LETTERING,
          false);
    }
    if (right) {
      upright(pen, area.right() - half, area);
      pen.write(
          PrintedSheet.Tile.name(tile.column() + 1, tile.row()) + " \u2192",
          area.right() - tile.overlap() - 14,
          area.top() * 0.62,
          Pen.LETTERING,
          false);
    }
    if (above) {
      level(pen, area.top() - half, area);
      pen.write(
          "\u2191 " + PrintedSheet.Tile.name(tile.column(), tile.row() - 1),
          area.right() * 0.62,
          area.top() - tile.overlap() - 5,
          Pen.LETTERING,
          false);
    }
    if (below) {
      level(pen, half, area);
      pen.write(
          "\u2193 " + PrintedSheet.Tile.name(tile.column(), tile.row() + 1),
          area.right() * 0.62,
          tile.overlap() + 2,
          Pen.LETTERING,
          false);
    }
  }

  private static void upright(Pen pen, double x, Extent area) throws IOException {
    pen.dashedFurniture();
    pen.line(x, 0, x, area.top());
    pen.furniture(Pen.NARROW);
    pen.registerMark(x, area.top() / 4);
    pen.registerMark(x, area.top() * 3 / 4);
  }

  private static void level(Pen pen, double y, Extent area) throws IOException {
    pen.dashedFurniture();
    pen.line(0, y, area.right(), y);
    pen.furniture(Pen.NARROW);
    pen.registerMark(area.right() / 4, y);
    pen.registerMark(area.right() * 3 / 4, y);
  }
}
