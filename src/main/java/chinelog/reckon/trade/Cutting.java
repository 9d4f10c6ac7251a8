package chinelog.reckon.trade;

import chinelog.nesting.Shelves;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Rectangular parts laid out on sheets: {@code cutting}.
 *
 * <p>Shelves: the widest part begins a shelf across the sheet, others of its width or less follow
 * along it where they fit, each in the first shelf with room (first fit, decreasing width). Grain
 * runs along the length, so that no part is turned. Every cut between two parts takes the kerf.
 * Never fewer sheets than the areas ask for, which is told beside.
 */
final class Cutting {

  private static final int MOST_PIECES = 2000;

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "cutting",
              "Parts laid out on sheets",
              List.of(
                  Parameter.table(
                      "parts", "length along the grain", "part", "length", "width", "count?"),
                  Parameter.quantity("sheet_length", "along the grain", Unit.METRE),
                  Parameter.quantity("sheet_width", "across it", Unit.METRE),
                  Parameter.quantity("kerf", "of the saw; a knife has none", Unit.METRE).or("0")),
              Cutting::of)
          .yielding(
              "pieces", "cutting.pieces",
              "sheets", "cutting.sheets",
              "sheets_by_area", "cutting.least",
              "used", "cutting.used",
              "sheet_…", "cutting.sheet",
              "along_…", "cutting.along",
              "across_…", "cutting.across");

  /**
   * A part, or one of several alike.
   *
   * @param key of its figures
   */
  private record Piece(String key, String name, double length, double width) {}

  private final YieldList yields =
      new YieldList().from("parts", "sheet_length", "sheet_width", "kerf");
  private final double length;
  private final double width;
  private final Shelves shelves;
  private final ShopUnits units;

  private Cutting(Inputs inputs, ShopUnits units) throws TradeException, QuantityException {
    this.units = units;
    length = Si.positive(inputs, "sheet_length", Unit.METRE);
    width = Si.positive(inputs, "sheet_width", Unit.METRE);
    double kerf = Si.value(inputs, "kerf", Unit.METRE, 0);
    if (kerf < 0) {
      throw new TradeException("kerf", "A saw's kerf cannot be negative.", "Give 0 or more.");
    }
    shelves = new Shelves(length, width, kerf);
  }

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    Columns parts = new Columns("parts", inputs.table("parts"));
    Cutting cutting = new Cutting(inputs, ShopUnits.of(parts.unit("length")));
    List<Piece> pieces = cutting.pieces(parts);
    double area = 0;
    for (Piece piece : pieces) {
      cutting.place(piece);
      area += piece.length * piece.width;
    }
    Terms counts = new Terms();
    for (double count : parts.numbers("count", Unit.ONE, 1)) {
      counts.add(Si.number(count));
    }
    cutting.sums(pieces.size(), area, counts.end());
    return cutting.yields.list();
  }

  private List<Piece> pieces(Columns parts) throws TradeException, QuantityException {
    parts.index("part");
    parts.requireDistinct("part");
    double[] l = parts.numbers("length", Unit.METRE);
    double[] w = parts.numbers("width", Unit.METRE);
    double[] count = parts.numbers("count", Unit.ONE, 1);
    List<Piece> pieces = new ArrayList<>();
    for (int i = 0; i < l.length; i++) {
      if (l[i] <= 0 || w[i] <= 0 || count[i] < 1 || count[i] != Math.rint(count[i])) {
        throw parts.at(
            i, "A part has no size or is no whole number of pieces.", "Put the row right.");
      }
      if (l[i] > length + 1e-9 || w[i] > width + 1e-9) {
        throw parts.at(
            i, "This part is larger than the sheet.", "Take a larger sheet, or scarf the part.");
      }
      for (int k = 1; k <= count[i]; k++) {
        String name = parts.text(i, "part");
        boolean isOne = count[i] == 1;
        pieces.add(
            new Piece(
                Offsets.factPart(name) + (isOne ? "" : "_" + k),
                isOne ? name : name + " " + k,
                l[i],
                w[i]));
      }
      if (pieces.size() > MOST_PIECES) {
        throw parts.at(
            i, Sentence.of("There are more than {0} pieces.", MOST_PIECES), "Divide the table.");
      }
    }
    pieces.sort(
        Comparator.comparingDouble(Piece::width)
            .thenComparingDouble(Piece::length)
            .reversed()
            .thenComparing(Piece::key));
    return pieces;
  }

  private void place(Piece piece) throws TradeException {
    Shelves.Spot spot = shelves.place(piece.length, piece.width);
    yields.add(
        "sheet_" + piece.key,
        Message.of("cutting.sheet", piece.name),
        Quantity.of(spot.sheet() + 1, Unit.ONE),
        Message.of("cutting.how"));
    yields.add(
        "along_" + piece.key,
        Message.of("cutting.along", piece.name),
        units.length(spot.along()),
        Message.of("cutting.how"));
    yields.add(
        "across_" + piece.key,
        Message.of("cutting.across", piece.name),
        units.length(spot.across()),
        Message.of("cutting.how"));
  }

  private void sums(int pieces, double area, Message counts) throws TradeException {
    yields.add("pieces", "cutting.pieces", Quantity.of(pieces, Unit.ONE), counts);
    yields.add(
        "sheets",
        Message.of("cutting.sheets"),
        Quantity.of(shelves.sheets(), Unit.ONE),
        Message.of("cutting.how"));
    yields.add(
        "sheets_by_area",
        Message.of("cutting.least"),
        Quantity.of(Planking.ceil(area / (length * width)), Unit.ONE),
        YieldList.worked(
            "⌈{0} ÷ ({1} × {2})⌉", units.area(area), units.side(length), units.side(width)));
    yields.add(
        "used",
        Message.of("cutting.used"),
        Si.percent(area / (shelves.sheets() * length * width)),
        YieldList.worked(
            "{0} ÷ ({1} × {2} × {3})",
            units.area(area), units.side(length), units.side(width), Si.number(shelves.sheets())));
  }
}
