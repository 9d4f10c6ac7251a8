package chinelog.quantity;

import java.util.List;
import java.util.Set;
import java.util.SortedMap;

/**
 * What is left of units that cancel against one another inside their own names: {@code mAh/A} is a
 * time, {@code V·mAh} an energy, {@code mm·rpm} a speed. A torque in N·m and a pressure in N/mm²
 * are left as they are.
 */
final class Folding {

  private static final Set<String> OF_CURRENT = Set.of("V", "A", "mA", "Ah", "mAh");
  private static final Set<String> OF_WORK = Set.of("W", "kW", "Wh", "J");
  private static final List<String> RESULTS = List.of("W", "V", "A", "Ah", "N");

  private Folding() {}

  /** The simplest unit of the same kind; {@code unit} itself where there is none simpler. */
  static Unit of(Unit unit) {
    List<Unit.Term> terms = unit.terms();
    if (terms.size() < 2) {
      return unit;
    }
    if (terms.stream().anyMatch(t -> isMixed(t) || isPower(t))) {
      for (Unit.Term term : terms) {
        Unit alone = new Unit(List.of(term));
        if (alone.isCompatible(unit)) {
          return alone;
        }
      }
    }
    boolean work = terms.stream().anyMatch(t -> isOne(t, OF_CURRENT) || isOne(t, OF_WORK));
    if (terms.stream().noneMatch(Folding::isMixed)) {
      return terms.size() > 2 && Unit.known("N").isCompatible(unit) ? Unit.known("N") : unit;
    }
    for (String result : RESULTS) {
      if (Unit.known(result).isCompatible(unit)) {
        return Unit.known(result);
      }
    }
    if (work && Unit.known("Wh").isCompatible(unit)) {
      return Unit.known("Wh");
    }
    if (Unit.MINUTE.isCompatible(unit)) {
      return work ? Unit.HOUR : Unit.known("s");
    }
    if (Unit.METRE.isCompatible(unit)) {
      return Unit.METRE;
    }
    Unit speed = Unit.METRE.dividedBy(Unit.known("s"));
    return speed.isCompatible(unit) ? speed : unit;
  }

  private static boolean isOne(Unit.Term term, Set<String> symbols) {
    return symbols.contains(term.measure().symbol());
  }

  /** Whether a symbol stands for several kinds at once, or for so many in a time. */
  private static boolean isMixed(Unit.Term term) {
    SortedMap<String, Integer> dimension = term.measure().dimension();
    return dimension.size() > 1
        || dimension.size() == 1 && dimension.getOrDefault(dimension.firstKey(), 0) < 0;
  }

  /** Whether a symbol stands for a product of its own kind, such as the litre. */
  private static boolean isPower(Unit.Term term) {
    SortedMap<String, Integer> dimension = term.measure().dimension();
    return dimension.size() == 1 && dimension.getOrDefault(dimension.firstKey(), 0) > 1;
  }
}
