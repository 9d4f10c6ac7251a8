package chinelog.pattern;

import chinelog.drawn.Spot;
import chinelog.edition.Pattern;
import chinelog.edition.Patterns;
import chinelog.nesting.Shelves;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Lays parts out on sheets: small ones side by side on shelves, the highest first, and each too
 * large for a sheet on several that overlap. The same parts come out the same.
 */
final class SheetLayout {

  /** Between parts, in mm: room for a blade. */
  private static final double GAP = 4;

  private final PaperSize paper;
  private final boolean roll;
  private final double overlap;
  private final List<PrintedSheet> sheets = new ArrayList<>();

  private SheetLayout(Patterns patterns) {
    this.paper = PaperSize.of(patterns);
    this.roll = patterns.heightMm() == 0;
    this.overlap = patterns.overlapMm();
  }

  static List<PrintedSheet> of(Patterns patterns) {
    SheetLayout layout = new SheetLayout(patterns);
    layout.lay(patterns.parts());
    return layout.sheets;
  }

  /** Whether a part must be turned, for fewer sheets. */
  private boolean isTurned(Extent box) {
    Extent area = paper.area();
    boolean upright = fits(box, area);
    return !upright && fits(box.turned(), area)
        || !upright && tiles(box.turned(), area) < tiles(box, area);
  }

  private static boolean fits(Extent box, Extent area) {
    return box.width() <= area.width() && box.height() <= area.height();
  }

  private int tiles(Extent box, Extent area) {
    return count(box.width(), area.width()) * count(box.height(), area.height());
  }

  private int count(double length, double room) {
    return (int) Math.max(1, Math.ceil((length - overlap) / (room - overlap) - 1e-9));
  }

  private void lay(List<Pattern> parts) {
    Extent area = paper.area();
    List<Piece> small = new ArrayList<>();
    List<Piece> large = new ArrayList<>();
    for (Pattern part : parts) {
      Extent box = Extent.of(part);
      boolean turned = isTurned(box);
      Piece piece = new Piece(part, turned, turned ? box.turned() : box);
      (fits(piece.box, area) ? small : large).add(piece);
    }
    shelves(small, area);
    large.forEach(piece -> tile(piece, area));
  }

  /** A part in the position it is laid down in. */
  private record Piece(Pattern pattern, boolean turned, Extent box) {

    /** With the corner of its box at a place. */
    Placed at(double x, double y) {
      return Placed.whole(pattern, turned, x - box.left(), y - box.bottom());
    }
  }

  /** The highest first, each where it fits first. */
  private void shelves(List<Piece> pieces, Extent area) {
    List<Piece> sorted = new ArrayList<>(pieces);
    sorted.sort(Comparator.comparingDouble((Piece p) -> -p.box.height()));
    Shelves shelves = new Shelves(area.width(), area.height(), GAP);
    List<List<Placed>> laid = new ArrayList<>();
    for (Piece piece : sorted) {
      Shelves.Spot spot = shelves.place(piece.box.width(), piece.box.height());
      if (spot.sheet() == laid.size()) {
        laid.add(new ArrayList<>());
      }
      // Shelves are filled from the top of the sheet.
      double y = area.top() - spot.across() - piece.box.height();
      laid.get(spot.sheet()).add(piece.at(spot.along(), y));
    }
    for (int i = 0; i < laid.size(); i++) {
      sheets.add(sheet(laid.get(i), shelves.taken(i), area));
    }
  }

  private PrintedSheet sheet(List<Placed> placed, double used, Extent area) {
    if (!roll) {
      return new PrintedSheet(paper, placed, null);
    }
    PaperSize cut = paper.cutTo(Math.max(used, Square.NEEDS));
    double down = cut.area().top() - area.top();
    return new PrintedSheet(
        cut,
        placed.stream()
            .map(p -> new Placed(p.pattern(), p.notes(), p.turned(), p.dx(), p.dy() + down))
            .toList(),
        null);
  }

  private void tile(Piece piece, Extent area) {
    PaperSize used = roll ? paper.cutTo(Math.min(area.height(), piece.box.height())) : paper;
    Extent room = used.area();
    int columns = count(piece.box.width(), room.width());
    int rows = count(piece.box.height(), room.height());
    double stepX = room.width() - overlap;
    double stepY = room.height() - overlap;
    // In the middle of the sheets joined.
    double left = (columns * stepX + overlap - piece.box.width()) / 2;
    double top = (rows * stepY + overlap - piece.box.height()) / 2;
    List<Placed> tiles = new ArrayList<>();
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        tiles.add(
            piece.at(
                left - column * stepX, room.height() - top - piece.box.height() + row * stepY));
      }
    }
    List<List<Pattern.Note>> notes = spread(piece.pattern.notes(), tiles, room);
    for (int i = 0; i < tiles.size(); i++) {
      Placed p = tiles.get(i);
      sheets.add(
          new PrintedSheet(
              used,
              List.of(new Placed(p.pattern(), notes.get(i), p.turned(), p.dx(), p.dy())),
              new PrintedSheet.Tile(i % columns, i / columns, columns, rows, overlap)));
    }
  }

  /**
   * Lettering goes on every sheet on which it stands whole; where an edge runs through it, it is
   * moved onto the sheet on which it begins.
   */
  private static List<List<Pattern.Note>> spread(
      List<Pattern.Note> notes, List<Placed> tiles, Extent room) {
    List<List<Pattern.Note>> spread = new ArrayList<>();
    tiles.forEach(t -> spread.add(new ArrayList<>()));
    for (Pattern.Note note : notes) {
      boolean stands = false;
      for (int i = 0; i < tiles.size(); i++) {
        if (room.holds(tiles.get(i).box(note))) {
          spread.get(i).add(note);
          stands = true;
        }
      }
      for (int i = 0; i < tiles.size() && !stands; i++) {
        Extent box = tiles.get(i).box(note);
        double dx = Math.min(0, room.right() - box.right()) + Math.max(0, -box.left());
        double dy = Math.min(0, room.top() - box.top()) + Math.max(0, -box.bottom());
        if (Math.hypot(dx, dy) <= Math.max(box.width(), box.height())) {
          boolean turned = tiles.get(i).turned();
          spread
              .get(i)
              .add(
                  new Pattern.Note(
                      note.text(),
                      new Spot(
                          note.at().x() + (turned ? dy : dx), note.at().y() + (turned ? -dx : dy)),
                      note.height()));
          stands = true;
        }
      }
    }
    return spread;
  }
}
