package chinelog.withhold.derive;

import chinelog.problem.Sentence;
import chinelog.withhold.derive.Derivability.Answer;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * By which equations a quantity can be worked out.
 *
 * @param steps in the order taken: each yields one quantity; empty if they must be solved together
 * @param together equations that fix it between them, where no order of steps does
 */
record Path(Model model, int goal, List<Step> steps, List<Equation> together) {

  private static final int MOST_TOGETHER = 40;
  private static final int MOST_TOLD = 6;

  /** One quantity from one equation in which all others are known. */
  record Step(int quantity, Equation equation) {}

  static Path find(Model model, Model.Component component, int goal) {
    Map<Integer, Equation> solved = new HashMap<>();
    List<Integer> order = new ArrayList<>();
    BitSet known = (BitSet) model.printed().clone();
    boolean more = true;
    while (more && !known.get(goal)) {
      more = false;
      for (Equation equation : component.equations()) {
        int unknown = onlyUnknown(equation, known);
        if (unknown >= 0) {
          known.set(unknown);
          solved.put(unknown, equation);
          order.add(unknown);
          more = true;
        }
      }
    }
    if (!known.get(goal)) {
      return new Path(model, goal, List.of(), fewest(model, component, goal));
    }
    BitSet needed = new BitSet();
    needed.set(goal);
    List<Step> steps = new ArrayList<>();
    for (int i = order.size() - 1; i >= 0; i--) {
      int quantity = order.get(i);
      Equation equation = solved.get(quantity);
      if (needed.get(quantity) && equation != null) {
        steps.add(0, new Step(quantity, equation));
        for (int member : equation.members()) {
          needed.set(member);
        }
      }
    }
    return new Path(model, goal, steps, List.of());
  }

  private static int onlyUnknown(Equation equation, BitSet known) {
    int unknown = -1;
    for (int member : equation.members()) {
      if (!known.get(member)) {
        if (unknown >= 0) {
          return -1;
        }
        unknown = member;
      }
    }
    return unknown;
  }

  /** Leaves out every equation without which the goal is still fixed. */
  private static List<Equation> fewest(Model model, Model.Component component, int goal) {
    List<Equation> rest = new ArrayList<>(component.equations());
    if (rest.size() > MOST_TOGETHER || !Identification.fixed(model, component).get(goal)) {
      return rest;
    }
    for (Equation equation : component.equations()) {
      List<Equation> fewer = new ArrayList<>(rest);
      fewer.remove(equation);
      if (Identification.fixed(model, new Model.Component(component.unknown(), fewer)).get(goal)) {
        rest = fewer;
      }
    }
    return rest;
  }

  /** Printed quantities on the path, those that are reckoned from others first. */
  Set<Integer> printed() {
    List<Equation> equations = new ArrayList<>(together);
    steps.forEach(step -> equations.add(step.equation()));
    Set<Integer> printed = new LinkedHashSet<>();
    equations.forEach(e -> add(e.target(), printed));
    for (Equation equation : equations) {
      for (int member : equation.members()) {
        add(member, printed);
      }
    }
    return printed;
  }

  private void add(int quantity, Set<Integer> printed) {
    if (model.printed().get(quantity)) {
      printed.add(quantity);
    }
  }

  Sentence inWords(Derivability.Verdict verdict) {
    String name = model.names()[goal];
    Map<String, String> named = named();
    ExpressionWords words = new ExpressionWords(n -> named.getOrDefault(n, n));
    List<String> parts = new ArrayList<>();
    for (Step step : steps) {
      String own = model.names()[step.quantity()];
      String how =
          words.solve(model.names()[step.equation().target()], step.equation().written(), own);
      parts.add(step.quantity() == goal ? how : own + " is " + how);
    }
    for (Equation equation : together) {
      parts.add(
          named.get(model.names()[equation.target()]) + " = " + words.write(equation.written()));
    }
    CharSequence by = String.join("; ", parts.subList(0, Math.min(MOST_TOLD, parts.size())));
    if (parts.size() > MOST_TOLD) {
      by = Sentence.of("{0}; and {1} more steps", by, parts.size() - MOST_TOLD);
    }
    if (verdict.answer() == Answer.UNKNOWN) {
      return Sentence.of("{0} could perhaps be worked out: {1}.", name, by);
    }
    double truth = model.values()[goal];
    double off = Math.max(verdict.high() - truth, truth - verdict.low());
    boolean near = truth != 0 && off > 0.001 * Math.abs(truth) && off < Math.abs(truth);
    String within = near ? String.format(Locale.ROOT, "%.1f", 100 * off / Math.abs(truth)) : "";
    return Sentence.of(
        near
            ? steps.isEmpty()
                ? "{0} can be worked out to within {2} % from these together: {1}."
                : "{0} can be worked out to within {2} %: {1}."
            : steps.isEmpty()
                ? "{0} can be worked out from these together: {1}."
                : "{0} can be worked out: {1}.",
        name,
        by,
        within);
  }

  /** How the quantities of the path are told: with their figures, where those are printed. */
  private Map<String, String> named() {
    Map<String, String> named = new HashMap<>();
    List<Equation> equations = new ArrayList<>(together);
    steps.forEach(step -> equations.add(step.equation()));
    for (Equation equation : equations) {
      for (int i : equation.members()) {
        String name = model.names()[i];
        String shown = model.shown()[i];
        named.put(name, shown.isEmpty() ? name : name + " " + shown);
      }
    }
    return named;
  }
}
