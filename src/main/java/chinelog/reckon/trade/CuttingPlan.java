package chinelog.reckon.trade;

import chinelog.drawn.LineUse;
import chinelog.drawn.Spot;
import chinelog.drawn.Stroke;
import chinelog.nesting.Shelves;
import chinelog.problem.Sentence;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Parts laid out on the sheets that they are sawn from, the highest first. Lengths in m. */
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
  private final Shelves shelves;
  private final List<Placed> placed = new ArrayList<>();

  private record Placed(Part part, Shelves.Spot at) {}

  private CuttingPlan(double width, double length) {
    this.width = width;
    this.length = length;
    this.shelves = new Shelves(width, length, GAP);
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
    for (Stroke stroke : part.strokes()) {
      for (Spot p : stroke.points()) {
        if (stroke.line() == LineUse.CUT) {
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
    placed.add(new Placed(part, shelves.place(wide, high)));
  }

  int sheets() {
    return shelves.sheets();
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
          LineUse.SCORE,
          List.of(
              new double[] {x, y},
              new double[] {x + width / scale, y},
              new double[] {x + width / scale, y + length / scale},
              new double[] {x, y + length / scale},
              new double[] {x, y}));
      for (Placed part : placed) {
        if (part.at.sheet() == i) {
          outline(drawing, part, x, y, scale);
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

  private static void outline(PartDrawing drawing, Placed spot, double x, double y, double scale) {
    double left = extent(spot.part, true)[0];
    double bottom = extent(spot.part, false)[0];
    for (Stroke stroke : spot.part.strokes()) {
      if (stroke.line() == LineUse.CUT) {
        List<double[]> points = new ArrayList<>();
        for (Spot p : stroke.points()) {
          points.add(
              new double[] {
                x + (spot.at.along() + p.x() / MM - left) / scale,
                y + (spot.at.across() + p.y() / MM - bottom) / scale
              });
        }
        points.add(points.get(0));
        drawing.curve(LineUse.SCORE, points);
      }
    }
    double[] wide = extent(spot.part, true);
    drawing.write(
        spot.part.name(),
        x + (spot.at.along() + wide[1] / 2) / scale - 0.002,
        y + (spot.at.across() + extent(spot.part, false)[1] / 2) / scale,
        PartDrawing.SMALL);
  }
}
