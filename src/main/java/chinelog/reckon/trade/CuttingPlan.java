package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Parts laid out on the sheets that they are sawn from: side by side on shelves, the highest first,
 * each where it fits first (first fit by decreasing height; Coffman, Garey, Johnson and Tarjan,
 * SIAM J. Comput. 9, 1980). None is turned, so that the grain runs as drawn. Lengths in m.
 */
final class CuttingPlan {

  static final List<Parameter> PARAMETERS =
      List.of(
          Parameter.quantity("sheet_width", "of a sheet to cut from, along the grain", Unit.METRE)
              .or("sheets are not counted"),
          Parameter.quantity("sheet_length", "of the sheet, across the grain", Unit.METRE)
              .or("as wide as long"),
          Parameter.quantity("sheets", "of that size at hand", Unit.ONE).or("0"));

  /** Between parts: room for the saw. */
  private static final double GAP = 0.005;

  private static final double MM = 1000;
  private static final double ROOM = 0.16;

  private final double width;
  private final double length;
  private final List<Shelf> shelves = new ArrayList<>();
  private final List<Double> used = new ArrayList<>();
  private final List<Spot> spots = new ArrayList<>();

  /** A part with the lower left corner of its place on a sheet. */
  private record Spot(Part part, int sheet, double x, double y) {}

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

  private CuttingPlan(double width, double length) {
    this.width = width;
    this.length = length;
  }

  static boolean isAsked(Inputs inputs) {
    return inputs.findQuantity("sheet_width").isPresent();
  }

  static CuttingPlan of(Inputs inputs, List<Part> parts, ShopUnits units)
      throws TradeException, QuantityException {
    double width = Si.positive(inputs, "sheet_width", Unit.METRE);
    CuttingPlan plan =
        new CuttingPlan(width, Si.positive(inputs, "sheet_length", Unit.METRE, width));
    List<Part> sorted = new ArrayList<>(parts);
    sorted.sort(Comparator.comparingDouble((Part p) -> -extent(p, false)[1]));
    for (Part part : sorted) {
      plan.lay(part, units);
    }
    return plan;
  }

  /** How far the lines to be cut reach, from the least to the greatest of x or y: {least, size}. */
  private static double[] extent(Part part, boolean across) {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (Part.Stroke stroke : part.strokes()) {
      for (Part.Point p : stroke.points()) {
        if (stroke.line() == Part.Line.CUT) {
          least = Math.min(least, (across ? p.x() : p.y()) / MM);
          most = Math.max(most, (across ? p.x() : p.y()) / MM);
        }
      }
    }
    return new double[] {least, most - least};
  }

  private void lay(Part part, ShopUnits units) throws TradeException {
    double wide = extent(part, true)[1];
    double high = extent(part, false)[1];
    if (wide > width || high > length) {
      throw new TradeException(
          "sheet_width",
          Sentence.of(
              "The part \"{0}\" is {1} wide and {2} high, larger than a sheet.",
              part.name(),
              units.length(Math.round(wide * 1e5) / 1e5),
              units.length(Math.round(high * 1e5) / 1e5)),
          "Give larger sheets; moulds may be cut in halves (mould: half).");
    }
    Shelf shelf =
        shelves.stream()
            .filter(s -> s.height >= high && s.right + wide <= width)
            .findFirst()
            .orElse(null);
    if (shelf == null) {
      int sheet = 0;
      while (sheet < used.size() && used.get(sheet) + high > length) {
        sheet++;
      }
      if (sheet == used.size()) {
        used.add(0.0);
      }
      shelf = new Shelf(sheet, used.get(sheet), high);
      used.set(sheet, used.get(sheet) + high + GAP);
      shelves.add(shelf);
    }
    spots.add(new Spot(part, shelf.sheet, shelf.right, shelf.bottom));
    shelf.right += wide + GAP;
  }

  int sheets() {
    return used.size();
  }

  /** The sheets side by side with the outlines of the parts on them, drawn small. */
  Part draw() {
    double scale = 1;
    for (double next : new double[] {2, 5, 10, 20, 50, 100}) {
      if (scale < 2 || width / scale > ROOM / 2) {
        scale = next;
      }
    }
    int across = (int) Math.max(1, Math.floor((ROOM + GAP) / (width / scale + GAP)));
    PartDrawing drawing =
        new PartDrawing(
            "cutting_plan", Message.of("pattern.cutting", "1:" + Math.round(scale), sheets()));
    for (int i = 0; i < sheets(); i++) {
      double x = i % across * (width / scale + GAP);
      double y = -(i / across + 1) * (length / scale + GAP);
      drawing.curve(
          Part.Line.SCORE,
          List.of(
              new double[] {x, y},
              new double[] {x + width / scale, y},
              new double[] {x + width / scale, y + length / scale},
              new double[] {x, y + length / scale},
              new double[] {x, y}));
      for (Spot spot : spots) {
        if (spot.sheet == i) {
          outline(drawing, spot, x, y, scale);
        }
      }
    }
    drawing.write(
        Message.of("pattern.cutting", "1:" + Math.round(scale), sheets()),
        0,
        0.002,
        PartDrawing.SMALL);
    return drawing.part();
  }

  private static void outline(PartDrawing drawing, Spot spot, double x, double y, double scale) {
    double left = extent(spot.part, true)[0];
    double bottom = extent(spot.part, false)[0];
    for (Part.Stroke stroke : spot.part.strokes()) {
      if (stroke.line() == Part.Line.CUT) {
        List<double[]> points = new ArrayList<>();
        for (Part.Point p : stroke.points()) {
          points.add(
              new double[] {
                x + (spot.x + p.x() / MM - left) / scale, y + (spot.y + p.y() / MM - bottom) / scale
              });
        }
        points.add(points.get(0));
        drawing.curve(Part.Line.SCORE, points);
      }
    }
    double[] wide = extent(spot.part, true);
    drawing.write(
        spot.part.name(),
        x + (spot.x + wide[1] / 2) / scale - 0.002,
        y + (spot.y + extent(spot.part, false)[1] / 2) / scale,
        PartDrawing.SMALL);
  }
}
