package chinelog.withhold.derive;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/**
 * Narrows ranges until no equation narrows any further (HC4-revise: Benhamou, Goualard,
 * Granvilliers, Puget, "Revising hull and box consistency", ICLP 1999).
 */
final class Propagation {

  /** A change smaller than this part of the range is not followed up. */
  private static final double WORTH = 1e-6;

  /** Equations in a ring may narrow each other for ever by less and less. */
  private static final int MOST_REVISIONS = 100;

  private Propagation() {}

  /** Narrows {@code domains} in place. */
  static void narrow(Model model, List<Equation> equations, Interval[] domains) {
    Deque<Equation> open = new ArrayDeque<>(equations);
    Map<Equation, Integer> revisions = new IdentityHashMap<>();
    Map<Equation, Boolean> waiting = new IdentityHashMap<>();
    equations.forEach(e -> waiting.put(e, true));
    while (!open.isEmpty()) {
      Equation equation = open.poll();
      waiting.put(equation, false);
      if (revisions.merge(equation, 1, Integer::sum) > MOST_REVISIONS) {
        continue;
      }
      Interval[] before = new Interval[equation.members().length];
      for (int i = 0; i < before.length; i++) {
        before[i] = domains[equation.members()[i]];
      }
      revise(model, equation, domains);
      for (int i = 0; i < before.length; i++) {
        int member = equation.members()[i];
        if (isNarrower(domains[member], before[i])) {
          for (Equation other : model.equationsOf().get(member)) {
            if (Boolean.FALSE.equals(waiting.get(other))) {
              waiting.put(other, true);
              open.add(other);
            }
          }
        }
      }
    }
  }

  private static void revise(Model model, Equation equation, Interval[] domains) {
    Interval right = equation.formula().range(domains);
    Interval both = right.meet(domains[equation.target()]);
    domains[equation.target()] = both;
    equation.formula().narrow(both, domains);
    for (int member : equation.members()) {
      domains[member] = keepTruth(domains[member], model.values()[member]);
    }
  }

  /** Values that came about by rounding may miss their equations by a last place. */
  private static Interval keepTruth(Interval range, double truth) {
    if (range.contains(truth)) {
      return range;
    }
    return range.isEmpty()
        ? Interval.of(truth)
        : new Interval(Math.min(range.low(), truth), Math.max(range.high(), truth));
  }

  private static boolean isNarrower(Interval now, Interval before) {
    if (Double.isInfinite(before.width())) {
      return now.low() > before.low() || now.high() < before.high();
    }
    return before.width() - now.width() > WORTH * before.width();
  }
}
