package chinelog.nesting;

import java.util.ArrayList;
import java.util.List;

/**
 * Rectangles side by side on shelves that run along a sheet, over as many sheets as it takes. None
 * is turned, so that the grain runs as drawn. Each lies where it fits first; given widest first,
 * that is first fit by decreasing height (Coffman, Garey, Johnson and Tarjan, SIAM J. Comput. 9,
 * 1980). The same rectangles come out the same. All lengths are in one unit, whichever.
 */
public final class Shelves {

  /** For figures that were added up. */
  private static final double CLOSE = 1e-9;

  private final double length;
  private final double width;
  private final double gap;
  private final List<Shelf> shelves = new ArrayList<>();
  private final List<Double> taken = new ArrayList<>();

  /**
   * Where a rectangle lies.
   *
   * @param sheet from 0
   * @param along of its corner next to the sheet's own
   * @param across the same across the sheet
   */
  public record Spot(int sheet, double along, double across) {}

  private static final class Shelf {
    final int sheet;
    final double across;
    final double width;
    double along;

    Shelf(int sheet, double across, double width) {
      this.sheet = sheet;
      this.across = across;
      this.width = width;
    }
  }

  /**
   * No sheet yet.
   *
   * @param length of each sheet, along its shelves
   * @param width of each sheet, across them
   * @param gap between neighbours, for a saw
   */
  public Shelves(double length, double width, double gap) {
    this.length = length;
    this.width = width;
    this.gap = gap;
  }

  /** Takes the first place that has room; a rectangle larger than a sheet gets one of its own. */
  public Spot place(double along, double across) {
    Shelf shelf =
        shelves.stream()
            .filter(s -> s.width >= across - CLOSE && s.along + along <= length + CLOSE)
            .findFirst()
            .orElseGet(() -> open(across));
    Spot spot = new Spot(shelf.sheet, shelf.along, shelf.across);
    shelf.along += along + gap;
    return spot;
  }

  private Shelf open(double across) {
    int sheet = 0;
    while (sheet < taken.size() && taken.get(sheet) + across > width + CLOSE) {
      sheet++;
    }
    if (sheet == taken.size()) {
      taken.add(0.0);
    }
    Shelf shelf = new Shelf(sheet, taken.get(sheet), across);
    taken.set(sheet, taken.get(sheet) + across + gap);
    shelves.add(shelf);
    return shelf;
  }

  public int sheets() {
    return taken.size();
  }

  /** How much of the width of a sheet is taken by shelves. */
  public double taken(int sheet) {
    return taken.get(sheet) - gap;
  }
}
