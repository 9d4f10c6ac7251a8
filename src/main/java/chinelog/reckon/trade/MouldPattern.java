package chinelog.reckon.trade;

import chinelog.drawn.LineUse;
import chinelog.problem.Sentence;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The mould of a station as it is cut: with its notch, its extension to the building board, and the
 * lines that are carried over from the drawing. Lengths in m; the base line is at height 0.
 *
 * @param waterlines to be drawn, by height, as they are called
 * @param board height of the building board; 0 for none
 * @param notch width of the notch; 0 for none
 * @param notchDepth from the station's keel upwards
 * @param half whether one side alone is drawn
 * @param towardsEnds whether the wood lies on the side of the hull's nearer end
 * @param fullest number of the fullest station
 */
record MouldPattern(
    Map<Double, Phrase> waterlines,
    ShopUnits units,
    boolean hasSheer,
    double board,
    double notch,
    double notchDepth,
    boolean half,
    boolean towardsEnds,
    int fullest) {

  private static final double SMALL = PartDrawing.SMALL;

  /** On each side of the middle line, lettering at both ends of a waterline leaves some room. */
  private static final double ROOM_INSIDE = 0.024;

  private static final double ROOM_FOR_BLOCK = 0.045;

  /** Between lettering and its line. */
  private static final double CLEAR = 0.0008;

  /** So much room a line's name takes beside the mould, and its bevel. */
  private static final double NAME = 0.016;

  private static final double BEVEL = 0.009;

  static MouldPattern of(Inputs inputs, Offsets offsets) throws TradeException, QuantityException {
    double notch = Si.positive(inputs, "notch_width", Unit.METRE, 0);
    double depth = Si.positive(inputs, "notch_depth", Unit.METRE, 0);
    if ((notch > 0) != (depth > 0)) {
      String missing = notch > 0 ? "notch_depth" : "notch_width";
      throw new TradeException(
          notch > 0 ? "notch_width" : "notch_depth",
          "Of the notch, one measure is missing.",
          Sentence.of("Give {0} too.", missing));
    }
    return new MouldPattern(
        waterlines(inputs, offsets),
        offsets.units(),
        offsets.hasSheer(),
        board(inputs, offsets),
        notch,
        depth,
        inputs.word("mould", "whole").equals("half"),
        inputs.word("body", "amidships").equals("ends"),
        fullest(offsets));
  }

  private static double board(Inputs inputs, Offsets offsets)
      throws TradeException, QuantityException {
    double board = Si.positive(inputs, "board", Unit.METRE, 0);
    for (HullSection station : offsets.stations()) {
      if (board > 0 && board < station.top()) {
        throw new TradeException(
            "board",
            Sentence.of("The building board lies below the top of station {0}.", station.name()),
            Sentence.of(
                "Give a height of more than {0} above the base line.",
                offsets
                    .units()
                    .length(
                        offsets.stations().stream()
                            .mapToDouble(HullSection::top)
                            .max()
                            .orElseThrow())));
      }
    }
    return board;
  }

  private static Map<Double, Phrase> waterlines(Inputs inputs, Offsets offsets)
      throws QuantityException {
    Map<Double, Phrase> lines = new TreeMap<>();
    offsets.waterlines().forEach((z, name) -> lines.put(z, Message.of("pattern.waterline", name)));
    double draught = Si.value(inputs, "draught", Unit.METRE, 0);
    if (draught > 0) {
      double listed =
          lines.keySet().stream()
              .filter(z -> Math.abs(z - draught) < 5e-5)
              .findFirst()
              .orElse(draught);
      Phrase name = lines.get(listed);
      lines.put(
          listed,
          name == null
              ? Message.of("pattern.design")
              : Message.of("pattern.waterline.design", name));
    }
    return lines;
  }

  private static int fullest(Offsets offsets) {
    int best = 0;
    for (int i = 1; i < offsets.stations().size(); i++) {
      if (breadth(offsets.stations().get(i)) > breadth(offsets.stations().get(best))) {
        best = i;
      }
    }
    return best;
  }

  private static double breadth(HullSection station) {
    return Arrays.stream(station.y()).max().orElseThrow();
  }

  /** Whether the wood of a station's mould lies before its line. */
  boolean liesForward(int station) {
    return (station < fullest) != towardsEnds;
  }

  Part draw(MouldSide side, int number) throws TradeException {
    String station = side.station().name();
    PartDrawing drawing =
        new PartDrawing(Offsets.factPart(station), Message.of("pattern.mould", station));
    List<double[]> right = right(side);
    drawing.cut(half ? right : whole(right));
    double top = Math.max(side.top(), board);
    drawing.line(LineUse.CENTRE, 0, right.get(0)[1], 0, top);
    lines(drawing, side);
    lettering(drawing, side, number, right.get(0)[1], top);
    return drawing.part();
  }

  /** The right half of the outline, from the middle line at the bottom to that at the top. */
  private List<double[]> right(MouldSide side) throws TradeException {
    List<double[]> outline = side.outline();
    List<double[]> right = new ArrayList<>();
    double edge = notch / 2;
    double upTo = side.station().keel() + notchDepth;
    int from = 0;
    if (notch > 0 && upTo > side.bottom()) {
      if (upTo >= side.top() || edge >= side.widest()) {
        throw new TradeException(
            "notch_width",
            Sentence.of(
                edge >= side.widest()
                    ? "The notch is wider than the mould of station {0}, which is {1} wide and {2} high."
                    : "The notch is deeper than the mould of station {0}, which is {1} wide and {2} high.",
                side.station().name(),
                units.length(2 * side.widest()),
                units.length(side.top() - side.bottom())),
            "Give a narrower or a shallower notch, or take the station out of the table.");
      }
      right.add(new double[] {0, upTo});
      if (side.half(upTo) > edge) {
        right.add(new double[] {edge, upTo});
        while (outline.get(from)[0] < edge) {
          from++;
        }
        right.add(
            from == 0
                ? new double[] {edge, side.bottom()}
                : across(outline.get(from - 1), outline.get(from), edge));
      } else {
        // Narrower there than the keel, on which it ends.
        right.add(new double[] {side.half(upTo), upTo});
        while (outline.get(from)[1] <= upTo) {
          from++;
        }
      }
    } else if (outline.get(0)[0] > 0) {
      right.add(new double[] {0, side.bottom()});
    }
    right.addAll(outline.subList(from, outline.size()));
    double[] sheer = outline.get(outline.size() - 1);
    if (board > sheer[1]) {
      right.add(new double[] {sheer[0], board});
    }
    right.add(new double[] {0, Math.max(board, sheer[1])});
    return right;
  }

  private static double[] across(double[] a, double[] b, double edge) {
    return Polyline.between(a, b, (edge - a[0]) / (b[0] - a[0]));
  }

  static List<double[]> whole(List<double[]> right) {
    List<double[]> whole = new ArrayList<>(right);
    for (int i = right.size() - 2; i > 0; i--) {
      whole.add(new double[] {-right.get(i)[0], right.get(i)[1]});
    }
    return whole;
  }

  private void lines(PartDrawing drawing, MouldSide side) {
    double inked = Double.NEGATIVE_INFINITY;
    List<Double> names = new ArrayList<>();
    List<Double> bevels = new ArrayList<>();
    for (Map.Entry<Double, Phrase> line : waterlines.entrySet()) {
      double z = line.getKey();
      double at = side.half(z);
      if (!(at > 0) || z <= notchTop(side) || z >= side.top() - 1e-6) {
        continue;
      }
      drawing.line(LineUse.SCORE, half ? 0 : -at, z, at, z);
      Phrase bevel = Phrase.own(Math.round(Math.toDegrees(side.bevel(z))) + "°");
      double widest = Math.max(at, widestUpTo(side, z));
      boolean free = isFree(side, z);
      double base = free ? z + CLEAR : z - SMALL - CLEAR;
      if (at > (half ? 2 * ROOM_INSIDE : ROOM_INSIDE)
          && (free || isFreeBelow(z) && base > inked + CLEAR / 2)) {
        double narrowest = narrowestUpTo(side, z);
        drawing.write(line.getValue(), half ? 0.002 : -narrowest + 0.002, base, SMALL);
        drawing.write(bevel, narrowest - 0.009, base, SMALL);
        inked = base + SMALL;
      } else {
        double edge = half ? 0 : -widest;
        drawing.write(line.getValue(), edge - NAME * (1 + column(names, base)), base, SMALL);
        drawing.write(bevel, widest + 0.003 + BEVEL * column(bevels, base), base, SMALL);
      }
    }
    if (board > side.top() && hasSheer) {
      double at = side.outline().get(side.outline().size() - 1)[0];
      drawing.line(LineUse.SCORE, half ? 0 : -at, side.top(), at, side.top());
      drawing.write(
          Message.of("pattern.sheer"),
          at > ROOM_INSIDE ? at * 0.3 : at + 0.003,
          side.top() + 0.0008,
          SMALL);
    }
  }

  private double notchTop(MouldSide side) {
    return notch > 0 ? side.station().keel() + notchDepth : side.bottom();
  }

  /**
   * In which column beside the mould lettering has room above what stands there already, so that
   * that of lines close together stands staggered.
   *
   * @param tops of the columns' lettering; brought up to date
   */
  private static int column(List<Double> tops, double base) {
    int column = 0;
    while (column < tops.size() && tops.get(column) + CLEAR / 2 > base) {
      column++;
    }
    if (column == tops.size()) {
      tops.add(base + SMALL);
    } else {
      tops.set(column, base + SMALL);
    }
    return column;
  }

  /** Whether there is room for letters between a line and the next below it. */
  private boolean isFreeBelow(double z) {
    double room = SMALL + 1.5 * CLEAR;
    return waterlines.keySet().stream().noneMatch(other -> other < z && other > z - room);
  }

  /** Whether there is room for letters between a line and the next above it. */
  private boolean isFree(MouldSide side, double z) {
    double room = SMALL + 1.5 * CLEAR;
    return waterlines.keySet().stream().noneMatch(other -> other > z && other < z + room)
        && (side.top() - z > room || !hasSheer);
  }

  /** Within the height of a letter above a line. */
  private static double widestUpTo(MouldSide side, double z) {
    double above = side.half(Math.min(z + SMALL + 0.001, side.top()));
    return Double.isNaN(above) ? side.half(z) : Math.max(side.half(z), above);
  }

  private static double narrowestUpTo(MouldSide side, double z) {
    double above = side.half(Math.min(z + SMALL + 0.001, side.top()));
    return Double.isNaN(above) ? side.half(z) : Math.min(side.half(z), above);
  }

  private void lettering(PartDrawing drawing, MouldSide side, int number, double bottom, double top)
      throws TradeException {
    String station = side.station().name();
    double atTop = side.outline().get(side.outline().size() - 1)[0];
    double spare = board - side.top();
    double size = atTop > 0.02 ? PartDrawing.LARGE : SMALL;
    drawing.write(station, 0.002, top - size - 0.003, size);
    grain(drawing, side);
    List<Phrase> block = new ArrayList<>();
    block.add(Message.of("pattern.mould", station));
    block.add(Message.of(liesForward(number) ? "pattern.face.aft" : "pattern.face.fore"));
    block.add(Message.of(towardsEnds ? "pattern.bevel.plane" : "pattern.bevel.none"));
    block.add(Message.of("pattern.base", amount(units, side.bottom())));
    if (board > 0) {
      block.add(Message.of("pattern.board.height", amount(units, board)));
    }
    double needed = 1.6 * SMALL * block.size() + 0.003;
    boolean inside = spare > needed && atTop > (half ? 2 * ROOM_FOR_BLOCK : ROOM_FOR_BLOCK + 0.03);
    if (inside) {
      drawing.block(block, half ? 0.014 : -atTop + 0.004, top - 0.001);
    } else if (side.widest() < 0.05) {
      drawing.block(block, side.widest() + 0.016, top);
    } else {
      drawing.block(block, half ? 0 : -side.widest(), bottom - 0.002);
    }
  }

  /** An arrow along the grain, between the two highest lines that leave room for it. */
  private void grain(PartDrawing drawing, MouldSide side) {
    double above = side.top();
    List<Double> lines = new ArrayList<>(waterlines.keySet());
    lines.removeIf(z -> z >= side.top() || z <= notchTop(side));
    lines.add(0, notchTop(side));
    for (int i = lines.size() - 1; i >= 0; i--) {
      double at = (lines.get(i) + above) / 2;
      double wide = side.half(at);
      if (above - lines.get(i) > 2 * SMALL && wide > 0.02) {
        double reach = Math.min(0.03, wide * 0.5);
        drawing.arrow(wide * 0.2, at, wide * 0.2 + reach, at);
        if (wide > 0.05) {
          drawing.write(
              Message.of("pattern.grain"), wide * 0.2 + reach + 0.002, at - SMALL / 2, SMALL);
        }
        return;
      }
      above = lines.get(i);
    }
  }

  /** A length as it is told on a drawing, to a hundredth of a millimetre. */
  static Phrase amount(ShopUnits units, double metres) throws TradeException {
    return new Phrase.Amount(units.length(Math.round(metres * 1e5) / 1e5));
  }
}
