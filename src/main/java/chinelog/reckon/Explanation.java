package chinelog.reckon;

import chinelog.log.records.Log;
import chinelog.log.records.Statement;
import chinelog.problem.Sentence;
import chinelog.quantity.NumberStyle;
import chinelog.quantity.Quantity;
import chinelog.reckon.formula.Expression;
import chinelog.reckon.formula.Formula;
import chinelog.reckon.formula.FormulaWriter;
import chinelog.wording.Catalogue;
import chinelog.wording.Fragment;
import chinelog.wording.Message;
import chinelog.wording.WorkedLine;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
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

  /** Nobody follows a branch that goes on further across the screen. */
  private static final int DEEPEST = 20;

  /** Enough that whoever reckons on gets the last digit shown, which is the fourth. */
  public static final int DIGITS = 7;

  private static final int MOST_NAMED_IN_WORDS = 8;
  private static final int MOST_NAMED_IN_A_SUM = 3;

  private final Log log;
  private final Facts facts;
  private final NumberStyle style;
  private final Catalogue words;
  private final Catalogue exact;
  private final List<String> lines = new ArrayList<>();
  private final Set<String> told = new HashSet<>();

  private Explanation(Log log, Facts facts) {
    this.log = log;
    this.facts = facts;
    this.style = new NumberStyle(log.head().locale(), log.head().inchDenominator());
    this.words = Catalogue.of(Facts.MESSAGES, log.head().locale());
    this.exact = words.toDigits(DIGITS);
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
    explanation.tell(fact, "", "", 0);
    return List.copyOf(explanation.lines);
  }

  private void tell(Fact fact, String branch, String below, int depth) {
    boolean again = !told.add(fact.name()) && !fact.inputs().isEmpty();
    lines.add(branch + line(fact, MOST_NAMED_IN_A_SUM) + (again ? "   " + say("(see above)") : ""));
    if (again) {
      return;
    }
    List<Fact> inputs = fact.basis().facts().stream().flatMap(n -> facts.find(n).stream()).toList();
    String bar = below + (inputs.isEmpty() ? "   " : "│  ");
    fact.method().forEach(m -> lines.add(bar + exact.text(m).replace('\u202f', ' ')));
    fact.basis().given().forEach(m -> lines.add(bar + exact.text(m).replace('\u202f', ' ')));
    figures(fact, inputs).ifPresent(f -> lines.add(bar + f));
    int most = inputs.size() > MOST_INPUTS ? MOST_INPUTS - 1 : inputs.size();
    boolean shut = isLongSum(fact) || depth == DEEPEST;
    for (int i = 0; i < most; i++) {
      boolean last = i == inputs.size() - 1;
      String own = below + (last ? "└─ " : "├─ ");
      if (shut) {
        lines.add(own + line(inputs.get(i), 1));
      } else {
        tell(inputs.get(i), own, below + (last ? "   " : "│  "), depth + 1);
      }
    }
    if (most < inputs.size()) {
      lines.add(below + "└─ " + say("and {0} more", inputs.size() - most));
    }
    if (shut && inputs.stream().anyMatch(f -> !f.inputs().isEmpty())) {
      lines.add(below + say("(Ask for one of these by its name to see what it is made of.)"));
    }
  }

  /** The figures put into a formula, where they are shown below to fewer digits than they have. */
  private Optional<String> figures(Fact fact, List<Fact> inputs) {
    Expression formula = fact.formula();
    boolean rounded =
        inputs.stream()
            .anyMatch(
                f ->
                    f.origin() == Origin.RECKONED
                        && !style
                            .showToDigits(f.value(), DIGITS)
                            .equals(style.showValue(f.value())));
    if (formula == null || !rounded || isLongSum(fact) || inputs.size() > MOST_NAMED_IN_WORDS) {
      return Optional.empty();
    }
    String written =
        FormulaWriter.write(
            formula, n -> style.showToDigits(facts.find(n).orElseThrow().value(), DIGITS), style);
    return Optional.of("= " + written.replace('\u202f', ' '));
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
      line.append(" = ").append(say("the sum of {0}", fact.inputs().size()));
    } else if (formula != null && fact.inputs().size() <= MOST_INPUTS) {
      line.append(" = ").append(FormulaWriter.write(formula, n -> n, style));
    }
    line.append(" = ").append(withError(fact.value(), style, words).replace('\u202f', ' '));
    line.append("   ").append(origin(fact));
    line.append(", ").append(fact.place());
    if (fact.date() != null) {
      line.append(", ").append(fact.date());
    }
    source(fact).forEach(s -> line.append(say(", from {0}", s)));
    if (!fact.label().isNone()) {
      line.append(say(", under {0}", fact.label()));
    }
    return line.toString();
  }

  private String origin(Fact fact) {
    return say(
        switch (fact.origin()) {
          case STATED -> "stated";
          case MEASURED -> "measured";
          case WEIGHED -> "weighed";
          case COUNTED -> "counted";
          case RECKONED -> "reckoned";
        });
  }

  /** In the language of the log. */
  private String say(String english, Object... parts) {
    return Sentence.of(english, parts).in(log.head().locale());
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
   * @param inFull whether they may see a fact by right, and not by a release alone: then figures
   *     are told to so many digits that the last one shown of what is reckoned from them follows.
   *     Where a release tells the result, they learn nothing of the figures that stand in its
   *     formula
   */
  public static List<WorkedLine> working(
      Fact fact, Facts facts, NumberStyle style, Predicate<String> named, Predicate<Fact> inFull) {
    Expression formula = fact.formula();
    if (formula == null && fact.method().isEmpty()) {
      return List.of();
    }
    boolean literals = inFull.test(fact);
    Catalogue words = Catalogue.of(Facts.MESSAGES, style.locale());
    Function<Fact, Fragment> value =
        f ->
            figure(
                f,
                inFull.test(f) ? style.showToDigits(f.value(), DIGITS) : style.showValue(f.value()),
                style);
    boolean tellsTooMuch = !literals && formula != null && Formula.hasLiterals(formula);
    if (tellsTooMuch || !fact.inputs().stream().allMatch(named)) {
      return List.of(new WorkedLine(WorkedLine.Kind.HOW, words.fragments(Message.of("not.shown"))));
    }
    List<WorkedLine> steps = new ArrayList<>();
    if (formula == null) {
      List<Message> method = new ArrayList<>(fact.method());
      method.removeIf(m -> !literals && m.hasAmounts());
      Catalogue exact = words.toDigits(DIGITS);
      steps.add(new WorkedLine(WorkedLine.Kind.HOW, exact.fragments(method)));
      if (literals) {
        fact.basis()
            .given()
            .forEach(m -> steps.add(new WorkedLine(WorkedLine.Kind.GIVEN, exact.fragments(m))));
      }
      fact.basis().facts().stream()
          .flatMap(n -> facts.find(n).stream())
          .forEach(f -> steps.add(given(f, value.apply(f), style, words)));
    } else if (isLongSum(fact)) {
      Message sum = Message.of("sum.of", fact.inputs().size());
      steps.add(new WorkedLine(WorkedLine.Kind.HOW, words.fragments(sum)));
    } else {
      Function<String, Fact> find = n -> facts.find(n).orElseThrow();
      List<Fragment> how = new ArrayList<>(words.fragments(fact.title()));
      how.add(Fragment.sign(" = "));
      how.addAll(
          FormulaWriter.fragments(
              formula, n -> quoted(words.fragments(find.apply(n).title())), style));
      steps.add(new WorkedLine(WorkedLine.Kind.HOW, how));
      if (!fact.inputs().isEmpty()) {
        List<Fragment> figures = new ArrayList<>(List.of(Fragment.sign("= ")));
        figures.addAll(
            FormulaWriter.fragments(formula, n -> List.of(value.apply(find.apply(n))), style));
        steps.add(new WorkedLine(WorkedLine.Kind.PUT_IN, figures));
      }
    }
    steps.add(result(fact, style, words));
    return List.copyOf(steps);
  }

  private static WorkedLine result(Fact fact, NumberStyle style, Catalogue words) {
    String shown = withError(fact.value(), style, words);
    Fragment tolerance = tolerance(fact.value(), style);
    return shown.endsWith(tolerance.text())
        ? WorkedLine.of(
            WorkedLine.Kind.RESULT,
            Fragment.sign("= "),
            figure(fact, shown.substring(0, shown.length() - tolerance.text().length()), style),
            tolerance)
        : WorkedLine.of(WorkedLine.Kind.RESULT, Fragment.sign("= "), figure(fact, shown, style));
  }

  private static WorkedLine given(Fact fact, Fragment figure, NumberStyle style, Catalogue words) {
    List<Fragment> fragments = new ArrayList<>(words.fragments(fact.title()));
    fragments.add(Fragment.words(": "));
    fragments.add(figure);
    fragments.add(tolerance(fact.value(), style));
    return new WorkedLine(WorkedLine.Kind.GIVEN, fragments);
  }

  private static Fragment figure(Fact fact, String shown, NumberStyle style) {
    return Fragment.figure(shown, style.unit(fact.value()));
  }

  /** Such as " ± 2 mm"; empty where there is none. */
  private static Fragment tolerance(Quantity value, NumberStyle style) {
    String shown = style.showTolerance(value);
    String text = shown.isEmpty() ? "" : " " + shown;
    return new Fragment(Fragment.Kind.TOLERANCE, text, "");
  }

  private static String withError(Quantity value, NumberStyle style, Catalogue words) {
    return style.showWithError(
        value, (a, b) -> words.text("error.less", a, b), (a, b) -> words.text("error.more", a, b));
  }

  /** Keeps the comma of a title apart from the formula around it. */
  private static List<Fragment> quoted(List<Fragment> title) {
    if (title.stream().noneMatch(f -> f.text().contains(","))) {
      return title;
    }
    List<Fragment> quoted = new ArrayList<>(title);
    quoted.add(0, Fragment.words("“"));
    quoted.add(Fragment.words("”"));
    return quoted;
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
