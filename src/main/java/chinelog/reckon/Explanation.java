package chinelog.reckon;

import chinelog.log.Log;
import chinelog.log.Statement;
import chinelog.quantity.NumberStyle;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * How a fact came about.
 *
 * <p>For the maker as a tree of lines, with places; for readers as steps in words. Numbers are
 * rounded only in being shown, never on the way.
 */
public final class Explanation {

  private static final int MOST_INPUTS = 24;
  private static final int MOST_NAMED_IN_WORDS = 8;
  private static final int MOST_NAMED_IN_A_SUM = 3;

  /** All that readers learn of a figure that rests on one they may not see. */
  private static final String NOT_SHOWN =
      "Worked out from figures of which not all are shown here.";

  private final Log log;
  private final Facts facts;
  private final NumberStyle style;
  private final List<String> lines = new ArrayList<>();
  private final Set<String> told = new HashSet<>();

  private Explanation(Log log, Facts facts) {
    this.log = log;
    this.facts = facts;
    this.style = new NumberStyle(log.head().locale(), log.head().inchDenominator());
  }

  /**
   * The tree of a fact for its maker, one line for each fact it rests on:
   *
   * <pre>
   * hull.loa = full.loa / scale = 700.0 mm ± 0.3 mm   reckoned, facts.yaml:27:1
   * ├─ full.loa = 11.200 m ± 0.005 m   stated, facts.yaml:5:1, 2026-03-14, from sheets/lines.pdf
   * └─ scale = 16   stated, log.yaml:7:8
   * </pre>
   */
  public static List<String> tree(Fact fact, Log log, Facts facts) {
    Explanation explanation = new Explanation(log, facts);
    explanation.tell(fact, "", "");
    return List.copyOf(explanation.lines);
  }

  private void tell(Fact fact, String branch, String below) {
    boolean again = !told.add(fact.name()) && !fact.inputs().isEmpty();
    lines.add(branch + line(fact, MOST_NAMED_IN_A_SUM) + (again ? "   (see above)" : ""));
    if (again) {
      return;
    }
    if (!fact.method().isEmpty()) {
      lines.add(below + (fact.inputs().isEmpty() ? "   " : "│  ") + fact.method());
    }
    List<Fact> inputs = fact.inputs().stream().flatMap(n -> facts.find(n).stream()).toList();
    int most = inputs.size() > MOST_INPUTS ? MOST_INPUTS - 1 : inputs.size();
    boolean shut = isLongSum(fact);
    for (int i = 0; i < most; i++) {
      boolean last = i == inputs.size() - 1;
      String own = below + (last ? "└─ " : "├─ ");
      if (shut) {
        lines.add(own + line(inputs.get(i), 1));
      } else {
        tell(inputs.get(i), own, below + (last ? "   " : "│  "));
      }
    }
    if (most < inputs.size()) {
      lines.add(below + "└─ and " + (inputs.size() - most) + " more");
    }
    if (shut && inputs.stream().anyMatch(f -> !f.inputs().isEmpty())) {
      lines.add(below + "(Ask for one of these by its name to see what it is made of.)");
    }
  }

  /** The parts of a long sum are not taken apart in turn: that would be a wall of figures. */
  private static boolean isLongSum(Fact fact) {
    Expression formula = fact.formula();
    return formula != null && fact.inputs().size() > MOST_NAMED_IN_WORDS && isSum(formula);
  }

  /**
   * @param mostNamed a sum of more than these is told by their number
   */
  private String line(Fact fact, int mostNamed) {
    StringBuilder line = new StringBuilder(fact.name());
    Expression formula = fact.formula();
    if (formula != null && fact.inputs().size() > mostNamed && isSum(formula)) {
      line.append(" = the sum of ").append(fact.inputs().size());
    } else if (formula != null && fact.inputs().size() <= MOST_INPUTS) {
      line.append(" = ").append(FormulaWriter.write(formula, n -> n, style));
    }
    line.append(" = ").append(style.showWithError(fact.value()).replace('\u202f', ' '));
    line.append("   ").append(fact.origin().name().toLowerCase(java.util.Locale.ROOT));
    line.append(", ").append(fact.place());
    if (fact.date() != null) {
      line.append(", ").append(fact.date());
    }
    source(fact).forEach(s -> line.append(", from ").append(s));
    if (!fact.label().isNone()) {
      line.append(", under ").append(fact.label());
    }
    return line.toString();
  }

  private List<String> source(Fact fact) {
    return log.statements().stream()
        .filter(s -> s.place().equals(fact.place()))
        .map(Statement::source)
        .filter(java.util.Objects::nonNull)
        .toList();
  }

  /**
   * How a fact was worked out, in words for a reader, one line a step; empty for one that was not.
   *
   * @param named whether the readers may see the fact of that name; if they may not see one that
   *     this rests on, all they learn is a fixed sentence
   */
  public static List<String> working(
      Fact fact, Facts facts, NumberStyle style, Predicate<String> named) {
    Expression formula = fact.formula();
    if (formula == null && fact.method().isEmpty()) {
      return List.of();
    }
    if (!fact.inputs().stream().allMatch(named)) {
      return List.of(NOT_SHOWN);
    }
    List<String> steps = new ArrayList<>();
    if (formula == null) {
      steps.add(fact.method());
      fact.inputs().stream()
          .flatMap(n -> facts.find(n).stream())
          .forEach(f -> steps.add(f.title() + ": " + style.show(f.value())));
    } else if (isLongSum(fact)) {
      steps.add("The sum of " + fact.inputs().size() + " figures.");
    } else {
      Function<String, Fact> find = n -> facts.find(n).orElseThrow();
      steps.add(
          fact.title()
              + " = "
              + FormulaWriter.write(formula, n -> quoted(find.apply(n).title()), style));
      if (!fact.inputs().isEmpty()) {
        steps.add(
            "= "
                + FormulaWriter.write(formula, n -> style.showValue(find.apply(n).value()), style));
      }
    }
    steps.add("= " + style.showWithError(fact.value()));
    return List.copyOf(steps);
  }

  /** Keeps the comma of a title apart from the formula around it. */
  private static String quoted(String title) {
    return title.contains(",") ? "“" + title + "”" : title;
  }

  private static boolean isSum(Expression tree) {
    if (tree instanceof Expression.Binary b) {
      return b.operator() == '+' && isSum(b.left()) && isSum(b.right());
    }
    return tree instanceof Expression.Name
        || tree instanceof Expression.Call c
            && c.function().equals("sum")
            && c.arguments().stream().allMatch(Explanation::isSum);
  }
}
