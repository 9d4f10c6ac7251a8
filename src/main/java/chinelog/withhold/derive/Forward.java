package chinelog.withhold.derive;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/**
 * Looks for other values by the plainest way: one quantity that rests on no other is given another
 * value, all that is reckoned from it is reckoned again, and what was printed is printed the same.
 */
final class Forward {

  private static final double HOLDS = 1e-10;

  private final Model model;
  private final Model.Component component;
  private final Interval[] domains;
  private final Map<Integer, Equation> defining = new HashMap<>();
  private final List<Integer> order = new ArrayList<>();

  /**
   * @param domains narrowed ranges of all quantities
   */
  Forward(Model model, Model.Component component, Interval[] domains) {
    this.model = model;
    this.component = component;
    this.domains = domains;
    component.equations().forEach(e -> defining.putIfAbsent(e.target(), e));
    BitSet placed = new BitSet();
    BitSet begun = new BitSet();
    defining.keySet().stream().sorted().forEach(target -> place(target, placed, begun));
  }

  /** Puts a quantity after all that it is reckoned from. */
  private void place(int start, BitSet placed, BitSet begun) {
    Deque<Integer> open = new ArrayDeque<>(List.of(start));
    while (!open.isEmpty()) {
      int quantity = open.peek();
      Equation equation = defining.get(quantity);
      if (placed.get(quantity) || equation == null) {
        open.pop();
        continue;
      }
      boolean first = !begun.get(quantity);
      begun.set(quantity);
      boolean ready = true;
      if (first) {
        for (int member : equation.members()) {
          if (member != quantity && defining.containsKey(member) && !begun.get(member)) {
            open.push(member);
            ready = false;
          }
        }
      }
      if (ready) {
        open.pop();
        placed.set(quantity);
        order.add(quantity);
      }
    }
  }

  /** Tells {@code found} what comes out if all that rests on nothing is changed at once. */
  void searchTogether(double[] factors, Consumer<double[]> found) {
    int[] grounds = grounds(component.unknown());
    for (double factor : factors) {
      tell(grounds, factor, found);
    }
  }

  /**
   * Tells {@code found} every set of values that came out, each for all quantities, where one thing
   * is changed on which a quantity of {@code goals} rests.
   */
  void search(double[] factors, BitSet goals, Consumer<double[]> found) {
    for (int ground : grounds(beneath(goals))) {
      for (double factor : factors) {
        tell(new int[] {ground}, factor, found);
      }
    }
  }

  /** Those of {@code among} that rest on no other. */
  int[] grounds(BitSet among) {
    return among.stream().filter(i -> !defining.containsKey(i)).toArray();
  }

  /** These quantities, and all unknown ones on which they rest. */
  private BitSet beneath(BitSet goals) {
    BitSet found = (BitSet) goals.clone();
    Deque<Integer> open = new ArrayDeque<>(goals.stream().boxed().toList());
    while (!open.isEmpty()) {
      Equation equation = defining.get(open.pop());
      for (int member : equation == null ? new int[0] : equation.members()) {
        if (component.unknown().get(member) && !found.get(member)) {
          found.set(member);
          open.push(member);
        }
      }
    }
    return found;
  }

  private void tell(int[] grounds, double factor, Consumer<double[]> found) {
    double[] x = model.values().clone();
    for (int ground : grounds) {
      x[ground] *= factor;
    }
    reckon(x);
    if (isAllowed(x)) {
      found.accept(x);
    }
  }

  /**
   * These quantities, the one in the middle of the order of reckoning first, then those at the
   * quarters, and so on: what moves half of a long sum against its other half shows most.
   */
  List<Integer> fromTheMiddle(BitSet among) {
    List<Integer> inOrder = new ArrayList<>(order);
    inOrder.removeIf(i -> !among.get(i));
    among.stream().filter(i -> !defining.containsKey(i)).forEach(inOrder::add);
    List<Integer> found = new ArrayList<>();
    for (int step = Integer.highestOneBit(inOrder.size()); step > 0; step /= 2) {
      for (int i = step; i <= inOrder.size(); i += 2 * step) {
        found.add(inOrder.get(i - 1));
      }
    }
    return found;
  }

  boolean isDefining(Equation equation) {
    return defining.get(equation.target()) == equation;
  }

  /** Puts in {@code x} all that is reckoned from other quantities of it. */
  void reckon(double[] x) {
    for (int target : order) {
      Equation equation = defining.get(target);
      if (equation != null) {
        x[target] = equation.formula().value(x);
      }
    }
  }

  /** Hands the slope by each reckoned quantity on to those that it is reckoned from. */
  void slopesBack(double[] x, double[] slopes) {
    for (int i = order.size() - 1; i >= 0; i--) {
      int target = order.get(i);
      Equation equation = defining.get(target);
      double slope = slopes[target];
      if (equation != null && slope != 0) {
        slopes[target] = 0;
        equation.formula().slopes(x, slope, false, slopes);
      }
    }
  }

  /** Whether every equation holds, and every quantity is in its range. */
  boolean isAllowed(double[] x) {
    for (Equation equation : component.equations()) {
      for (int member : equation.members()) {
        if (!domains[member].contains(x[member])) {
          return false;
        }
      }
    }
    return component.equations().stream().allMatch(e -> e.error(x) <= HOLDS);
  }
}
