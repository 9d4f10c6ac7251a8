package chinelog.pattern;

import chinelog.edition.Pattern;
import chinelog.edition.Patterns;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The parts of all reckonings laid out on the sheets that they are cut from: side by side on
 * shelves, the highest first, each where it fits first (first fit by decreasing height; Coffman,
 * Garey, Johnson and Tarjan, SIAM J. Comput. 9, 1980). None is turned, so that the grain runs as
 * drawn. The same parts come out the same.
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

  private static final class Shelf {
    final int sheet;
    final double bottom;
    final double height;
    double right;

    Shelf(int sheet, double bottom, double height) {
      this.sheet = sheet;
      this.bottom = bottom;
      this.height = height;
    }
  }

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
        Box box = Box.ofCuts(part);
        sized.add(new Cut(part, 0, 0, 0, box.width(), box.height()));
      }
    }
    sized.sort(Comparator.comparingDouble(c -> -c.width()));
    double gap = GAP + patterns.kerfMm();
    List<Shelf> shelves = new ArrayList<>();
    List<Double> used = new ArrayList<>();
    List<Cut> laid = new ArrayList<>();
    for (Cut cut : sized) {
      Shelf shelf =
          shelves.stream()
              .filter(s -> s.height >= cut.width() && s.right + cut.length() <= stock.lengthMm())
              .findFirst()
              .orElseGet(() -> open(shelves, used, cut.width(), stock.widthMm(), gap));
      laid.add(
          new Cut(
              cut.part(), shelf.sheet + 1, shelf.right, shelf.bottom, cut.length(), cut.width()));
      shelf.right += cut.length() + gap;
    }
    laid.sort(Comparator.comparingInt(Cut::sheet));
    return new Nest(stock, used.size(), laid);
  }

  private static Shelf open(
      List<Shelf> shelves, List<Double> used, double high, double room, double gap) {
    int sheet = 0;
    while (sheet < used.size() && used.get(sheet) + high > room) {
      sheet++;
    }
    if (sheet == used.size()) {
      used.add(0.0);
    }
    Shelf shelf = new Shelf(sheet, used.get(sheet), high);
    used.set(sheet, used.get(sheet) + high + gap);
    shelves.add(shelf);
    return shelf;
  }

  private static boolean isCut(Pattern part) {
    return part.strokes().stream().anyMatch(s -> s.line() == Pattern.Line.CUT);
  }
}
