package chinelog.reckon;

import chinelog.log.records.Log;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What a model's figure is at full size, and the other way round: 700 mm at 1:16 is 11.2 m.
 *
 * <p>Lengths go with the scale, areas with its square, volumes and masses with its cube; speeds, by
 * Froude's law, with its square root, so that the waves look alike (W. Froude, 1868 to 1874; in
 * every handbook of ship model testing). Masses are those of a model that displaces its volume to
 * scale in the same water.
 */
public final class Similitude {

  private static final Unit SPEED = Unit.METRE.dividedBy(Unit.MINUTE);

  /** How a kind of quantity goes: with the scale to the power of half of {@code halves}. */
  private record Kind(Unit like, int halves) {}

  private static final List<Kind> KINDS =
      List.of(
          new Kind(Unit.METRE, 2),
          new Kind(Unit.METRE.power(2), 4),
          new Kind(Unit.METRE.power(3), 6),
          new Kind(Unit.KILOGRAM, 6),
          new Kind(SPEED, 1));

  /** First parts of names that speak of the vessel herself, and not of the workshop. */
  private static final Set<String> VESSEL =
      Set.of(
          "boom",
          "built",
          "deck",
          "funnel",
          "house",
          "hull",
          "keel",
          "mast",
          "model",
          "rig",
          "rudder",
          "sail",
          "spar",
          "wheelhouse");

  /** Reckonings whose lengths, areas and volumes are the vessel's. */
  private static final Set<String> VESSEL_RECKONINGS =
      Set.of("balance", "hull-form", "rig", "sail", "spar");

  /** What those reckonings yield for the bench only. */
  private static final Set<String> WORKSHOP_YIELDS = Set.of("ballast", "mass", "mct");

  private Similitude() {}

  /**
   * Whether a figure of the model says anything at full size: the hull's length and the sail's area
   * do; the resin, the strips to buy and the mass of a part do not.
   *
   * <p>It does if it is a speed; or if it is a length, area, volume or mass and its name begins
   * with a word for the vessel, such as {@code hull.loa}, or a fact {@code full.…} of the same name
   * is there, or it is worked out from such a fact and the scale, or a reckoning of the vessel's
   * form or rig yields it. Of masses that were weighed only the total does.
   *
   * @param log whose fact it is
   */
  public static boolean hasCounterpart(Fact fact, Log log) {
    FactId id = fact.id();
    if (id.rest().isEmpty() || id.isAboutFullSize()) {
      return false;
    }
    if (SPEED.isCompatible(fact.value().unit())) {
      return true;
    }
    boolean scales = KINDS.stream().anyMatch(k -> k.like.isCompatible(fact.value().unit()));
    if (!scales || id.group().equals(FactId.MASS.group())) {
      return scales && id.equals(FactId.MASS);
    }
    return VESSEL.contains(id.group())
        || fact.inputs().contains(FactId.SCALE.name())
            && fact.inputs().stream().anyMatch(i -> new FactId.Named(i).isFullSize())
        || log.statements().stream().anyMatch(s -> s.name().equals(FactId.ofSubject(id.rest())))
        || id instanceof FactId.Yielded yielded
            && VESSEL_RECKONINGS.contains(yielded.reckoning())
            && !WORKSHOP_YIELDS.contains(yielded.yield());
  }

  /**
   * The full-size counterpart of a model's length, area, volume, mass or speed; empty for other
   * kinds, such as hours or money.
   *
   * @param scale the denominator, 16 for 1:16
   */
  public static Optional<Quantity> findFullSize(Quantity model, Quantity scale) {
    return find(model, scale, 1);
  }

  /** The model's counterpart of a full-size length, area, volume, mass or speed. */
  public static Optional<Quantity> findModel(Quantity fullSize, Quantity scale) {
    return find(fullSize, scale, -1);
  }

  private static Optional<Quantity> find(Quantity quantity, Quantity scale, int direction) {
    for (Kind kind : KINDS) {
      if (kind.like.isCompatible(quantity.unit())) {
        return Optional.of(scaled(quantity, scale, kind.halves, direction));
      }
    }
    return Optional.empty();
  }

  private static Quantity scaled(Quantity quantity, Quantity scale, int halves, int direction) {
    try {
      Quantity factor = halves % 2 == 0 ? scale.power(halves / 2) : scale.power(halves).root();
      return direction > 0 ? quantity.times(factor) : quantity.dividedBy(factor);
    } catch (QuantityException e) {
      throw new IllegalArgumentException("not a scale: " + scale, e);
    }
  }
}
