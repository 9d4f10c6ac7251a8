package chinelog.book.page;

import chinelog.edition.Picture;
import chinelog.edition.Plate;
import chinelog.edition.Text.PlateHere.Layout;
import java.util.ArrayList;
import java.util.List;

/**
 * Lays plates in rows by their shapes: alone, in pairs, or three and more abreast, all of a row of
 * one height.
 */
public final class PlateRows {

  public static final double GAP_MM = 4;

  /** The least height of a row of several, as a part of the text's width. */
  private static final double LEAST = 0.29;

  /** The greatest height of a plate that shares its page with text, as a part of the page's. */
  private static final double MOST = 0.46;

  /** A plate that cannot be as wide as the text is at most this part of it. */
  public static final double NARROW = 2 / 3.0;

  /** What is almost as wide as the text may as well be as wide. */
  private static final double ALMOST = 0.94;

  private static final int ABREAST = 3;

  /** Of the text's width, a plate that stands beside its words. */
  private static final double HALF = 0.5;

  /** Of the page's height, what a plate may take that is to be as large as there is room. */
  private static final double WIDE_HEIGHT = 0.85;

  private final double widthMm;
  private final double heightMm;
  private final double mostHeightMm;

  public PlateRows(Trim trim) {
    this.widthMm = trim.textWidthMm();
    this.heightMm = trim.textHeightMm();
    this.mostHeightMm = trim.textHeightMm() * MOST;
  }

  /** A plate with the width it is shown at. */
  public record Placed(Plate plate, double widthMm) {
    public double heightMm() {
      return widthMm / shape(plate);
    }
  }

  public List<List<Placed>> lay(List<Plate> plates) {
    List<List<Placed>> rows = new ArrayList<>();
    int start = 0;
    while (start < plates.size()) {
      int count = abreast(plates.subList(start, plates.size()));
      rows.add(row(plates.subList(start, start + count)));
      start += count;
    }
    return rows;
  }

  /** The row of a plate that is laid out as its maker says. */
  public List<Placed> lay(Plate plate, Layout layout) {
    double mostMm =
        switch (layout) {
          case BY_SHAPE, PLAIN -> aloneMm(shape(plate));
          case BESIDE -> Math.min(aloneMm(shape(plate)), HALF * widthMm);
          case WIDE -> Math.min(widthMm, WIDE_HEIGHT * heightMm * shape(plate));
        };
    return List.of(new Placed(plate, mostMm));
  }

  /** How many of the plates go into the next row. */
  private int abreast(List<Plate> left) {
    if (left.size() == 1) {
      return 1;
    }
    // Four are two pairs, and an odd one out stands alone at the head, large.
    if (left.size() != ABREAST + 1 && left.size() >= ABREAST && fits(left.subList(0, ABREAST))) {
      return ABREAST;
    }
    boolean pairsComeOut = left.size() % 2 == 0;
    return pairsComeOut && fits(left.subList(0, 2)) ? 2 : 1;
  }

  private boolean fits(List<Plate> row) {
    return rowHeight(row) >= LEAST * widthMm;
  }

  private List<Placed> row(List<Plate> row) {
    if (row.size() == 1) {
      return List.of(new Placed(row.get(0), aloneMm(shape(row.get(0)))));
    }
    double height = Math.min(rowHeight(row), mostHeightMm);
    return row.stream().map(p -> new Placed(p, height * shape(p))).toList();
  }

  private double aloneMm(double shape) {
    double most = mostHeightMm * shape;
    if (most >= ALMOST * widthMm) {
      return widthMm;
    }
    return Math.min(most, NARROW * widthMm);
  }

  private double rowHeight(List<Plate> row) {
    double shapes = row.stream().mapToDouble(PlateRows::shape).sum();
    return (widthMm - GAP_MM * (row.size() - 1)) / shapes;
  }

  /** Width over height. */
  public static double shape(Plate plate) {
    Picture.Rendition largest = plate.picture().largest();
    return (double) largest.widthPx() / largest.heightPx();
  }
}
