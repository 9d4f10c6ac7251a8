package chinelog.pattern;

import chinelog.drawn.LineUse;
import chinelog.edition.Pattern;
import chinelog.edition.Patterns;
import chinelog.nesting.Shelves;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The parts of all reckonings laid out on the sheets that they are cut from, the widest first.
 *
 * @param stock what they are cut from
 * @param sheets how many are needed
 * @param cuts in the order laid
 */
record Nest(Patterns.Stock stock, int sheets, List<Cut> cuts) {

  /** Between parts, in mm: room for a saw, besides what a cutter takes away. */
  private static final double GAP = 5;

  Nest {
    cuts = List.copyOf(cuts);
  }

  /**
   * A part on a sheet.
   *
   * @param sheet from 1
   * @param along of the lower left corner of its place, in mm along the grain
   * @param across the same across the grain
   */
  record Cut(Pattern part, int sheet, double along, double across, double length, double width) {}

  /** A nest for each kind of sheet that parts of the edition are cut from. */
  static List<Nest> of(Patterns patterns) {
    List<Nest> nests = new ArrayList<>();
    for (Patterns.Stock stock : patterns.stock()) {
      if (stock.widthMm() > 0) {
        nests.add(of(patterns, stock));
      }
    }
    return nests;
  }

  private static Nest of(Patterns patterns, Patterns.Stock stock) {
    List<Cut> sized = new ArrayList<>();
    for (Pattern part : patterns.parts()) {
      if (stock.parts().contains(part.id()) && isCut(part)) {
        Extent box = Extent.ofCuts(part);
        sized.add(new Cut(part, 0, 0, 0, box.width(), box.height()));
      }
    }
    sized.sort(Comparator.comparingDouble(c -> -c.width()));
    Shelves shelves = new Shelves(stock.lengthMm(), stock.widthMm(), GAP + patterns.kerfMm());
    List<Cut> laid = new ArrayList<>();
    for (Cut cut : sized) {
      Shelves.Spot spot = shelves.place(cut.length(), cut.width());
      laid.add(
          new Cut(
              cut.part(),
              spot.sheet() + 1,
              spot.along(),
              spot.across(),
              cut.length(),
              cut.width()));
    }
    laid.sort(Comparator.comparingInt(Cut::sheet));
    return new Nest(stock, shelves.sheets(), laid);
  }

  private static boolean isCut(Pattern part) {
    return part.strokes().stream().anyMatch(s -> s.line() == LineUse.CUT);
  }
}
