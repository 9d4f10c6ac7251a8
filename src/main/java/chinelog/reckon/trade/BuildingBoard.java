package chinelog.reckon.trade;

import chinelog.drawn.LineUse;
import chinelog.wording.Message;
import java.util.List;

/**
 * The board on which the moulds stand: its middle line and a line square to it for each station.
 */
final class BuildingBoard {

  /** How far the board reaches beyond the first and last station and the widest mould, in m. */
  private static final double BEYOND = 0.02;

  private BuildingBoard() {}

  static Part draw(Offsets offsets, MouldPattern moulds) throws TradeException {
    List<HullSection> stations = offsets.stations();
    double half =
        BEYOND + stations.stream().mapToDouble(s -> s.y()[s.y().length - 1]).max().orElseThrow();
    double from = stations.get(0).x() - BEYOND;
    double to = stations.get(stations.size() - 1).x() + BEYOND;
    PartDrawing drawing = new PartDrawing("building_board", Message.of("pattern.board"));
    drawing.cut(
        List.of(
            new double[] {from, -half},
            new double[] {to, -half},
            new double[] {to, half},
            new double[] {from, half}));
    drawing.line(LineUse.CENTRE, from, 0, to, 0);
    for (int i = 0; i < stations.size(); i++) {
      double x = stations.get(i).x();
      drawing.line(LineUse.SCORE, x, -half, x, half);
      drawing.write(stations.get(i).name(), x + 0.0015, half - 0.009, PartDrawing.LARGE);
      // Where the wood of the mould stands, as carpenters mark it.
      drawing.write("×", x + (moulds.liesForward(i) ? 0.0015 : -0.004), 0.004, PartDrawing.SMALL);
      if (i > 0) {
        double before = stations.get(i - 1).x();
        drawing.write(
            MouldPattern.amount(offsets.units(), x - before),
            (x + before) / 2 - 0.006,
            -half + 0.003,
            PartDrawing.SMALL);
      }
    }
    drawing.block(
        List.of(Message.of("pattern.board"), Message.of("pattern.board.cross")),
        from + 0.0245,
        half - 0.012);
    return drawing.part();
  }
}
