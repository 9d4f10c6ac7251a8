package chinelog.reckon.trade;

import java.util.List;
import java.util.Optional;

/** The trade's reckonings by name. */
public final class TradeReckonings {

  private static final List<TradeReckoning> ALL =
      List.of(
          HullForm.RECKONING,
          Moulds.RECKONING,
          Planking.RECKONING,
          Laminate.RECKONING,
          Coating.RECKONING,
          Balance.RECKONING,
          MassGrowth.RECKONING,
          Sail.RECKONING,
          Rig.RECKONING,
          Spar.RECKONING,
          Running.RECKONING,
          ScanScale.RECKONING,
          StockedSize.RECKONING,
          WaterDensity.RECKONING,
          Wood.RECKONING,
          Materials.RECKONING,
          CurveArea.RECKONING,
          Effort.THREE_POINT,
          Effort.LEARNING,
          EarnedValue.RECKONING,
          Runs.RECKONING,
          Motor.RECKONING,
          Foil.RECKONING,
          Bulb.RECKONING,
          AsSheFloats.RECKONING,
          Carrying.RECKONING,
          Cutting.RECKONING,
          Fairing.RECKONING);

  private TradeReckonings() {}

  /** The reckoning that facts.yaml calls by this name, such as {@code hull-form}. */
  public static Optional<TradeReckoning> find(String name) {
    return ALL.stream().filter(r -> r.name().equals(name)).findFirst();
  }

  /** Every name, in alphabetical order. */
  public static List<String> names() {
    return ALL.stream().map(TradeReckoning::name).sorted().toList();
  }
}
