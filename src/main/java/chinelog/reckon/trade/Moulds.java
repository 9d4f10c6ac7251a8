package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Message;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * The station moulds, {@code moulds}: the hull's outline less the planking, and the board on which
 * they stand. {@link MouldSide} has the formula, {@link MouldPattern} the drawing.
 */
final class Moulds {

  static final TradeReckoning RECKONING =
      new TradeReckoning(
              "moulds",
              "Station moulds less the thickness of the planking",
              List.of(
                  Offsets.TABLE,
                  Parameter.quantity("thickness", "of the planking", Unit.METRE),
                  Offsets.SIDING,
                  Offsets.MANNER.get(0),
                  Offsets.MANNER.get(1),
                  Parameter.word("station", "one station alone").or("all stations"),
                  Parameter.quantity(
                          "draught", "the design waterline, drawn on the moulds", Unit.METRE)
                      .or("not drawn"),
                  Parameter.quantity(
                          "board",
                          "how high above the base line the building board lies; moulds reach up to it"
                              + " and stand on it upside down",
                          Unit.METRE)
                      .or("moulds end at the sheer"),
                  Parameter.quantity("notch_width", "of the notch for keel or backbone", Unit.METRE)
                      .or("no notch"),
                  Parameter.quantity(
                          "notch_depth",
                          "of the notch, from the station's keel upwards",
                          Unit.METRE)
                      .or("no notch"),
                  Parameter.word("mould", "drawn whole, or half to be turned over", "whole", "half")
                      .or("whole"),
                  Parameter.word(
                          "body",
                          "to which side of its station's line the wood of a mould lies; towards the"
                              + " ends it is planed to the bevels",
                          "amidships",
                          "ends")
                      .or("amidships"),
                  CuttingPlan.PARAMETERS.get(0),
                  CuttingPlan.PARAMETERS.get(1),
                  CuttingPlan.PARAMETERS.get(2),
                  DeckPattern.CAMBER,
                  TransomPattern.RAKE),
              Moulds::of)
          .yielding(
              "half_…", "mould",
              "bottom_…", "mould.bottom",
              "sheets", "mould.sheets",
              "sheets_short", "mould.sheets.short")
          .drawing(Moulds::draw);

  private static final Message METHOD = Message.of("mould.how");

  private Moulds() {}

  /** The numbers of the stations asked for. */
  private static List<Integer> stations(Inputs inputs, Offsets offsets) throws TradeException {
    String only = inputs.word("station", "");
    List<Integer> found = new ArrayList<>();
    for (int i = 0; i < offsets.stations().size(); i++) {
      if (only.isEmpty() || offsets.stations().get(i).name().equals(only)) {
        found.add(i);
      }
    }
    if (found.isEmpty()) {
      throw new TradeException(
          "station",
          Sentence.of("There is no station \"{0}\".", only),
          "Write a station as the table of offsets names it.");
    }
    return found;
  }

  private static List<Yield> of(Inputs inputs) throws TradeException, QuantityException {
    Offsets offsets = Offsets.read(inputs);
    double thickness = Si.positive(inputs, "thickness", Unit.METRE);
    YieldList yields = new YieldList();
    for (int i : stations(inputs, offsets)) {
      MouldSide side = MouldSide.of(offsets, i, thickness);
      List<MouldSide> coarser = coarser(offsets.stations(), i, thickness);
      HullSection station = side.station();
      String part = Offsets.factPart(station.name());
      if (station.flat() > 0) {
        yields.add(
            "bottom_" + part,
            Message.of("mould.bottom", station.name()),
            offsets.units().length(side.bottom()),
            Message.of("mould.bottom.how"),
            MouldSide.bottomWorked(offsets.units(), offsets, i, thickness));
      }
      for (double height : heights(station, side.bottom())) {
        double half = side.half(height);
        if (half > 0) {
          yields.add(
              "half_" + part + "_" + label(offsets, height),
              Message.of("mould", station.name(), offsets.units().length(height)),
              Doubt.cut(half, doubt(half, height, coarser), offsets.units()::length),
              METHOD,
              Message.of("mould.between"),
              side.worked(offsets.units(), height),
              Message.of("mould.doubt"));
        }
      }
    }
    if (CuttingPlan.isAsked(inputs)) {
      sheets(yields, inputs, offsets);
    }
    return yields.list();
  }

  /** The same mould without one of its heights, and without the station on either side. */
  private static List<MouldSide> coarser(List<HullSection> stations, int index, double thickness) {
    HullSection own = stations.get(index);
    List<List<HullSection>> sets = new ArrayList<>();
    for (int k : FairCurve.someOf(1, own.z().length - 1)) {
      List<HullSection> set = new ArrayList<>(stations);
      set.set(index, own.without(k));
      sets.add(set);
    }
    for (int beside : new int[] {index - 1, index + 1}) {
      if (beside > 0 && beside < stations.size() - 1) {
        List<HullSection> set = new ArrayList<>(stations);
        set.remove(beside);
        sets.add(set);
      }
    }
    return Doubt.reckoned(sets, set -> MouldSide.of(set, set.indexOf(find(set, own)), thickness));
  }

  private static HullSection find(List<HullSection> set, HullSection own) {
    return set.stream().filter(s -> s.x() == own.x()).findFirst().orElseThrow();
  }

  /** What a height itself tells is given: only what leaves it in the table counts. */
  private static double doubt(double half, double height, List<MouldSide> coarser) {
    return Doubt.of(
        half,
        coarser.stream()
            .filter(
                side ->
                    Arrays.stream(side.station().z()).anyMatch(z -> Math.abs(z - height) < 1e-9))
            .map(side -> side.half(height))
            .toList(),
        h -> h);
  }

  private static void sheets(YieldList yields, Inputs inputs, Offsets offsets)
      throws TradeException, QuantityException {
    int needed = CuttingPlan.of(inputs, moulds(inputs, offsets), offsets.units()).sheets();
    double atHand = Si.value(inputs, "sheets", Unit.ONE, 0);
    Message how = Message.of("mould.sheets.how");
    yields.add("sheets", Message.of("mould.sheets"), Quantity.of(needed, Unit.ONE), how);
    yields.add(
        "sheets_short",
        Message.of("mould.sheets.short"),
        Quantity.of((long) Math.ceil(Math.max(0, needed - atHand)), Unit.ONE),
        how,
        needed > atHand
            ? YieldList.worked("{0} − {1}", Si.number(needed), Si.number(atHand))
            : YieldList.worked("{0}", Si.number(0)));
  }

  /** Those of the offsets; a flat bottom's own instead of what lies within its planking. */
  private static double[] heights(HullSection station, double bottom) {
    return station.flat() > 0
        ? DoubleStream.concat(
                DoubleStream.of(bottom), Arrays.stream(station.z()).filter(z -> z > bottom + 1e-9))
            .toArray()
        : station.z();
  }

  private static String label(Offsets offsets, double height) throws TradeException {
    return offsets
        .units()
        .length(height)
        .value()
        .round(new MathContext(6))
        .stripTrailingZeros()
        .toPlainString()
        .replace('.', '_');
  }

  private static List<Part> moulds(Inputs inputs, Offsets offsets)
      throws TradeException, QuantityException {
    double thickness = Si.positive(inputs, "thickness", Unit.METRE);
    MouldPattern pattern = MouldPattern.of(inputs, offsets);
    List<Part> parts = new ArrayList<>();
    for (int i : stations(inputs, offsets)) {
      parts.add(pattern.draw(MouldSide.of(offsets, i, thickness), i));
    }
    return parts;
  }

  private static List<Part> draw(Inputs inputs) throws TradeException, QuantityException {
    Offsets offsets = Offsets.read(inputs);
    List<Part> moulds = moulds(inputs, offsets);
    List<Part> parts = new ArrayList<>(moulds);
    if (moulds.size() > 1) {
      parts.add(BuildingBoard.draw(offsets, MouldPattern.of(inputs, offsets)));
    }
    double thickness = Si.positive(inputs, "thickness", Unit.METRE);
    if (inputs.findQuantity("transom_rake").isPresent()) {
      double degrees = Si.value(inputs, "transom_rake", Si.DEGREE);
      parts.add(TransomPattern.draw(offsets, thickness, Math.toRadians(degrees)));
    }
    if (inputs.findQuantity("camber").isPresent()) {
      double camber = Si.value(inputs, "camber", Unit.METRE);
      if (camber < 0) {
        throw new TradeException("camber", "The camber is negative.", "Give 0 or more.");
      }
      parts.add(DeckPattern.draw(offsets, thickness, camber));
    }
    if (CuttingPlan.isAsked(inputs)) {
      parts.add(CuttingPlan.of(inputs, moulds, offsets.units()).draw());
    }
    return parts;
  }
}
