package chinelog.withhold.derive;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;

/**
 * Everything a reader may know: quantities by index, which of them are printed, and the equations
 * between them.
 *
 * @param values the true ones
 * @param printed which the reader sees
 * @param asPrinted what a printed figure says of its quantity
 * @param equationsOf for each quantity, those it is in
 */
record Model(
    String[] names,
    String[] shown,
    double[] values,
    BitSet printed,
    Interval[] asPrinted,
    List<Equation> equations,
    List<List<Equation>> equationsOf) {

  /** What is known of each quantity before any equation is used. */
  Interval[] domains() {
    Interval[] domains = new Interval[values.length];
    for (int i = 0; i < domains.length; i++) {
      domains[i] =
          printed.get(i) ? asPrinted[i] : values[i] < 0 ? Interval.ALL : Interval.NOT_NEGATIVE;
    }
    return domains;
  }

  /** This, with some quantities not printed. */
  Model without(List<Integer> withheld) {
    BitSet fewer = (BitSet) printed.clone();
    withheld.forEach(fewer::clear);
    return new Model(names, shown, values, fewer, asPrinted, equations, equationsOf);
  }

  /**
   * The quantities that are not printed and hang together with {@code start}, and all equations
   * that hold any of them.
   */
  Component componentOf(int start) {
    BitSet unknown = new BitSet();
    List<Equation> found = new ArrayList<>();
    Set<Equation> seen = Collections.newSetFromMap(new IdentityHashMap<>());
    Deque<Integer> open = new ArrayDeque<>(List.of(start));
    unknown.set(start);
    while (!open.isEmpty()) {
      for (Equation equation : equationsOf.get(open.pop())) {
        if (!seen.add(equation)) {
          continue;
        }
        found.add(equation);
        for (int member : equation.members()) {
          if (!printed.get(member) && !unknown.get(member)) {
            unknown.set(member);
            open.push(member);
          }
        }
      }
    }
    return new Component(unknown, found);
  }

  /** Quantities that hang together, by what is not printed. */
  record Component(BitSet unknown, List<Equation> equations) {}
}
