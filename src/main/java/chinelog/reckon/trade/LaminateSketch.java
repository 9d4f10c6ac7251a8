package chinelog.reckon.trade;

import chinelog.drawn.Anchor;
import chinelog.drawn.Ink;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.util.List;

/** The laminate schedule as a section: the layers of each zone, one upon the other. */
final class LaminateSketch {

  private static final double LEFT = 2;
  private static final double RIGHT = Sketch.WIDTH - 2;
  private static final double HIGHEST_LAYER = 16;
  private static final double HIGHEST = 96;

  private LaminateSketch() {}

  /**
   * @param name empty where there is but one
   * @param layers of cloth; the last may be a part of one
   * @param cloth kg/m² of one layer
   * @param thickness of the whole, in m
   */
  record Zone(String name, double layers, double cloth, double thickness) {}

  static Sketch draw(List<Zone> zones) throws TradeException {
    double thickest = zones.stream().mapToDouble(Zone::thickness).max().orElseThrow();
    double layer =
        zones.stream()
            .mapToDouble(z -> z.thickness() / Math.max(1, z.layers()))
            .max()
            .orElseThrow();
    double scale = Math.min(HIGHEST / thickest, HIGHEST_LAYER / layer);
    SketchPad pad = new SketchPad();
    pad.head(
        Message.of("sketch.zone"),
        Message.of("sketch.layers"),
        Message.of("sketch.cloth"),
        Message.of("sketch.thickness"));
    double y = 0;
    for (Zone zone : zones) {
      Quantity cloth = Si.show(zone.cloth(), Si.KG_M2, Si.unit("g/m²"));
      Quantity thick = Si.show(zone.thickness(), Unit.METRE, Unit.MILLIMETRE);
      Quantity layers = Si.number(zone.layers());
      y -= SketchPad.LINE;
      pad.write(
          Message.of(
              zone.name().isEmpty() ? "sketch.layers.of" : "sketch.layers.of.zone",
              layers,
              cloth,
              thick,
              zone.name()),
          LEFT,
          y,
          Anchor.START);
      y -= 5 + zone.thickness() * scale;
      layers(pad, zone, y, scale);
      y -= 10;
      pad.row(zone.name(), layers, cloth, thick);
    }
    return pad.sketch(
        "laminate", Message.of("sketch.laminate"), Message.of("sketch.laminate.about"), y + 8, 0);
  }

  private static void layers(SketchPad pad, Zone zone, double bottom, double scale) {
    double each = zone.thickness() * scale / zone.layers();
    double y = bottom;
    for (int i = 0; i < zone.layers(); i++) {
      double high = each * Math.min(1, zone.layers() - i);
      pad.surface(
          i % 2 == 0 ? Ink.DONE : Ink.DONE_NEXT,
          List.of(
              new double[] {LEFT, y},
              new double[] {RIGHT, y},
              new double[] {RIGHT, y + high},
              new double[] {LEFT, y + high}));
      y += high;
    }
  }
}
