package chinelog.quantity;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** Finds the metric unit that suits a reckoned quantity's size. */
final class Rescaling {

  /** A unit and the least number of coherent units (m, m², m³, kg) from which on it is used. */
  private record Step(Unit unit, BigDecimal from) {
    static Step of(String symbol, String from) {
      try {
        return new Step(Unit.parse(symbol), new BigDecimal(from));
      } catch (QuantityException e) {
        throw new IllegalStateException(symbol, e);
      }
    }
  }

  private static final List<List<Step>> LADDERS =
      List.of(
          List.of(
              Step.of("km", "10000"),
              Step.of("m", "1"),
              Step.of("mm", "0.0001"),
              Step.of("µm", "0")),
          List.of(Step.of("m²", "1"), Step.of("cm²", "0.0001"), Step.of("mm²", "0")),
          List.of(Step.of("m³", "1"), Step.of("L", "0.001"), Step.of("cm³", "0")),
          List.of(Step.of("t", "1000"), Step.of("kg", "1"), Step.of("g", "0")));

  /** Metric units that may be exchanged for each other on show. */
  private static final List<String> METRIC =
      List.of(
          "m", "mm", "cm", "km", "µm", "m²", "cm²", "mm²", "m³", "cm³", "mm³", "L", "mL", "g", "kg",
          "mg", "t");

  private Rescaling() {}

  static Quantity suited(Quantity quantity) {
    if (quantity.hasChosenUnit()
        || quantity.value().signum() == 0
        || !METRIC.contains(quantity.unit().symbol())) {
      return quantity;
    }
    return LADDERS.stream()
        .filter(l -> l.get(0).unit.isCompatible(quantity.unit()))
        .findFirst()
        .flatMap(l -> step(l, quantity))
        .orElse(quantity);
  }

  private static Optional<Quantity> step(List<Step> ladder, Quantity quantity) {
    try {
      BigDecimal size = quantity.abs().valueIn(coherent(quantity.unit()));
      for (Step step : ladder) {
        if (size.compareTo(step.from) >= 0) {
          return Optional.of(quantity.in(step.unit));
        }
      }
      return Optional.empty();
    } catch (QuantityException e) {
      throw new IllegalStateException("units of one kind", e);
    }
  }

  private static Unit coherent(Unit unit) {
    return List.of(Unit.METRE, Unit.METRE.power(2), Unit.METRE.power(3), Unit.KILOGRAM).stream()
        .filter(unit::isCompatible)
        .findFirst()
        .orElseThrow();
  }
}
