package chinelog.pattern;

import chinelog.drawn.LineUse;
import chinelog.drawn.Spot;
import chinelog.drawn.Stroke;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * What comes before the sheets: how to print them, what to beware of, and which is which, drawn
 * small.
 */
final class Overview {

  private static final double LINE = 5.6;
  private static final double GAP = 6;

  /** The sheets are drawn at one of these, the largest at which all find room (ISO 5455). */
  private static final int[] SCALES = {2, 5, 10, 20, 50, 100};

  private Overview() {}

  /** Sheets that are drawn together: one alone, or those that are joined. */
  record Group(int first, List<PrintedSheet> sheets) {

    double width() {
      PrintedSheet.Tile tile = sheets.get(0).tile();
      double one = sheets.get(0).paper().area().width();
      return tile == null ? one : one + (tile.columns() - 1) * (one - tile.overlap());
    }

    double height() {
      PrintedSheet.Tile tile = sheets.get(0).tile();
      double one = sheets.get(0).paper().area().height();
      return tile == null ? one : one + (tile.rows() - 1) * (one - tile.overlap());
    }
  }

  static List<Group> groups(List<PrintedSheet> sheets) {
    List<Group> groups = new ArrayList<>();
    int i = 0;
    while (i < sheets.size()) {
      PrintedSheet.Tile tile = sheets.get(i).tile();
      int n = tile == null ? 1 : tile.columns() * tile.rows();
      groups.add(new Group(i + 1, sheets.subList(i, i + n)));
      i += n;
    }
    return groups;
  }

  /** A group with the upper left corner of its place. */
  record Arranged(Group group, double x, double y) {}

  /**
   * Groups in rows, from the top of a room.
   *
   * @return none if they do not find room
   */
  private static List<Arranged> arranged(List<Group> groups, double scale, Extent room) {
    List<Arranged> spots = new ArrayList<>();
    double x = room.left();
    double y = room.top();
    double row = 0;
    for (Group group : groups) {
      double width = Math.max(group.width() / scale, 10);
      double height = group.height() / scale + LINE;
      if (x > room.left() && x + width > room.right()) {
        x = room.left();
        y -= row + GAP;
        row = 0;
      }
      if (x + width > room.right() || y - height < room.bottom()) {
        return List.of();
      }
      spots.add(new Arranged(group, x, y));
      x += width + GAP;
      row = Math.max(row, height);
    }
    return spots;
  }

  /** The groups drawn small in a room; the scale is returned, or 0 if there is none for them. */
  static int draw(Pen pen, List<Group> groups, Extent room) throws IOException {
    for (int scale : SCALES) {
      List<Arranged> spots = arranged(groups, scale, room);
      if (!spots.isEmpty()) {
        for (Arranged spot : spots) {
          draw(pen, spot, scale);
        }
        return scale;
      }
    }
    return 0;
  }

  private static void draw(Pen pen, Arranged spot, double scale) throws IOException {
    int number = spot.group.first();
    for (PrintedSheet sheet : spot.group.sheets()) {
      PrintedSheet.Tile tile = sheet.tile();
      Extent area = sheet.paper().area();
      double left = spot.x;
      double top = spot.y;
      if (tile != null) {
        left += tile.column() * (area.width() - tile.overlap()) / scale;
        top -= tile.row() * (area.height() - tile.overlap()) / scale;
      }
      pen.furniture(Pen.NARROW);
      double bottom = top - area.height() / scale;
      pen.box(new Extent(left, bottom, left + area.width() / scale, top));
      pen.ink();
      for (Placed placed : sheet.parts()) {
        if (tile == null || tile.column() == 0 && tile.row() == 0) {
          outline(pen, placed, left, bottom, scale);
        }
      }
      pen.write(
          tile == null ? String.valueOf(number) : tile.name(),
          left + 1,
          bottom + 1,
          tile == null ? Pen.LETTERING : Math.min(Pen.LETTERING, area.height() / scale / 2),
          false);
      number++;
    }
    if (spot.group.sheets().size() > 1) {
      pen.write(
          spot.group.first() + "\u2013" + (number - 1),
          spot.x,
          spot.y - spot.group.height() / scale - LINE + 1,
          Pen.LETTERING,
          false);
    }
  }

  private static void outline(Pen pen, Placed placed, double left, double bottom, double scale)
      throws IOException {
    for (Stroke stroke : placed.pattern().strokes()) {
      if (stroke.line() == LineUse.CUT) {
        List<Spot> points = new ArrayList<>(stroke.points());
        if (stroke.closed()) {
          points.add(points.get(0));
        }
        for (int i = 1; i < points.size(); i++) {
          pen.line(
              left + placed.x(points.get(i - 1)) / scale,
              bottom + placed.y(points.get(i - 1)) / scale,
              left + placed.x(points.get(i)) / scale,
              bottom + placed.y(points.get(i)) / scale);
        }
      }
    }
  }
}
