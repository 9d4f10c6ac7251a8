package chinelog.withhold;

import chinelog.label.Label;
import chinelog.log.records.Log;
import chinelog.log.records.Readers;
import chinelog.log.records.Release;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import chinelog.quantity.NumberStyle;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import chinelog.reckon.Fact;
import chinelog.reckon.FactId;
import chinelog.reckon.Facts;
import chinelog.reckon.formula.Formula;
import chinelog.withhold.derive.Derivability;
import chinelog.withhold.question.Sight;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * Asks whether the figures that an edition shows give away one that it withholds, through the
 * relations that the log itself holds: its formulas and sums, and full size = model × scale.
 */
final class Disclosure {

  private final Log log;
  private final Facts facts;
  private final FigureMaker figures;
  private final Sight sight;
  private final Readers own;
  private final LocalDate asOf;
  private final NumberStyle style;
  private final Web web;
  private final Web.Side told;
  private final Cells cells;
  private final Set<String> sums = new HashSet<>();
  private final List<Withholder.WayOut> waysOut = new ArrayList<>();
  private final Map<String, Derivability.Item> shown = new TreeMap<>();
  private final List<Knowledge.Given> given;

  /**
   * @param known figures that readers were given before, these readers and others
   */
  Disclosure(
      WholeLog whole,
      VisibleLog visible,
      FigureMaker figures,
      Sight sight,
      Readers own,
      List<PrintedFigure> known) {
    this.log = whole.log();
    this.facts = whole.facts();
    this.figures = figures;
    this.sight = sight;
    this.own = own;
    this.asOf = sight.asOf();
    this.style = figures.style();
    this.web = new Web(whole);
    this.cells = new Cells(log, sight::allows);
    this.told = web.side(visible.facts(), " as told");
    for (String name : figures.shown()) {
      this.told
          .find(name)
          .ifPresent(f -> show(this.told.quantity(f), figures.value(f), figures.step(f)));
    }
    figures.sums().forEach(this::showSum);
    this.given =
        new Knowledge(whole, web, List.of(this.told, web.side(facts, "")), own).read(known);
  }

  private void show(String quantity, Quantity value, Quantity step) {
    // A figure is printed to the nearest step, so what its digits tell is within half of one.
    double v = value.coherent();
    shown.put(
        quantity, Derivability.Item.printed(quantity, v, v, step.coherent(), style.show(value)));
  }

  private void showSum(List<String> parts, Quantity value) {
    List<String> quantities =
        parts.stream().flatMap(n -> told.find(n).stream()).map(told::quantity).toList();
    String name = "the sum of " + String.join(", ", quantities);
    sums.add(name);
    web.add(name, value.coherent(), quantities);
    show(name, value, style.step(value));
  }

  /** What would mend the problems found. */
  List<Withholder.WayOut> waysOut() {
    return List.copyOf(waysOut);
  }

  /** An error for each withheld figure that can be worked out. */
  List<Problem> problems() {
    waysOut.clear();
    Set<String> hidden = new TreeSet<>(figures.hidden());
    hidden.removeAll(shown.keySet());
    Map<Set<String>, Set<String>> secrets = new LinkedHashMap<>();
    for (String name : hidden) {
      Set<String> unaware = unaware(facts.find(name).orElseThrow());
      secrets.computeIfAbsent(unaware, u -> new TreeSet<>()).add(name);
    }
    List<Problem> problems = new ArrayList<>();
    List<Derivability.Relation> relations = new DisclosingRelations(log, facts, web, cells).all();
    for (String name : cells(relations).keySet()) {
      Label label = label(name);
      if (!sight.allows(label)) {
        secrets.computeIfAbsent(unaware(s -> label), u -> new TreeSet<>()).add(name);
      }
    }
    secrets.forEach((unaware, names) -> check(unaware, names, relations, problems));
    hidden.stream().flatMap(n -> plan(n).stream()).forEach(problems::add);
    group(FactId.COST, id -> id instanceof FactId.Cost c && c.span() == FactId.Span.STAGE)
        .ifPresent(problems::add);
    for (FactId.Span span : List.of(FactId.Span.STAGE, FactId.Span.WEEK)) {
      group(FactId.HOURS, id -> id instanceof FactId.Hours h && h.span() == span)
          .ifPresent(problems::add);
    }
    return problems;
  }

  /**
   * Ids of the readers who may not see a figure. They may meet, and lay side by side what each of
   * them was given.
   */
  private Set<String> unaware(Fact fact) {
    return unaware(s -> s.afterReleases(Release.Kind.FACT, fact.name(), fact.label()));
  }

  private Set<String> unaware(Function<Sight, Label> left) {
    Set<String> unaware = new TreeSet<>(Set.of(own.id()));
    for (Readers readers : log.readers()) {
      Sight sight = new Sight(log, readers, asOf);
      if (!sight.allows(left.apply(sight))) {
        unaware.add(readers.id());
      }
    }
    return unaware;
  }

  private void check(
      Set<String> unaware,
      Set<String> secrets,
      List<Derivability.Relation> relations,
      List<Problem> problems) {
    Map<String, PrintedFigure> out = out(unaware);
    List<Derivability.Item> items = new ArrayList<>();
    facts
        .byName()
        .forEach((n, f) -> items.add(item(n, f.value().coherent(), secrets.contains(n), out)));
    web.others().forEach((n, v) -> items.add(item(n, v, false, out)));
    cells(relations).forEach((n, c) -> items.add(item(n, c, secrets.contains(n))));
    out.forEach(
        (name, figure) -> {
          if (secrets.contains(name)) {
            problems.add(alreadyOut(name, figure, unaware));
          }
        });
    Map<Set<String>, List<Derivability.Verdict>> byCause = new LinkedHashMap<>();
    for (Derivability.Verdict verdict :
        Derivability.check(
            items, relations, log.head().closeness().doubleValue(), Quantity::coherent)) {
      if (verdict.answer() != Derivability.Answer.SAFE
          && !web.others().containsKey(verdict.name())) {
        List<Set<String>> remedies = remedies(verdict, out.keySet());
        Set<String> cause = remedies.isEmpty() ? Set.of(verdict.name()) : remedies.get(0);
        byCause.computeIfAbsent(cause, c -> new ArrayList<>()).add(verdict);
      }
    }
    byCause.values().forEach(same -> problems.add(problem(same, out.keySet())));
  }

  /** The finest figure of each quantity that any of these readers was given before. */
  private Map<String, PrintedFigure> out(Set<String> unaware) {
    Set<String> all = log.readers().stream().map(Readers::id).collect(Collectors.toSet());
    Map<String, PrintedFigure> out = new TreeMap<>();
    for (Knowledge.Given g : given) {
      String who = g.figure().readers();
      // Readers whom the log no longer names may be anybody.
      if (unaware.contains(who) || !all.contains(who)) {
        out.merge(g.quantity(), g.figure(), Disclosure::finer);
      }
    }
    return out;
  }

  private static PrintedFigure finer(PrintedFigure a, PrintedFigure b) {
    int order =
        Comparator.comparingDouble(PrintedFigure::step)
            .thenComparing(PrintedFigure::since)
            .compare(a, b);
    return order <= 0 ? a : b;
  }

  private Derivability.Item item(
      String name, double value, boolean secret, Map<String, PrintedFigure> out) {
    Derivability.Item today = shown.get(name);
    PrintedFigure before = out.get(name);
    if (before != null && (today == null || before.step() < today.step())) {
      return Derivability.Item.printed(
          name,
          value,
          before.value(),
          before.step(),
          before.printed()
              + " (already out since "
              + before.since()
              + (before.readers().equals(own.id()) ? "" : " for " + before.readers())
              + ")");
    }
    if (today != null) {
      return today;
    }
    Fact fact = facts.find(name).orElse(null);
    return secret && fact != null && !fact.id().isBookkeeping()
        ? Derivability.Item.withheld(name, value).inGrains(isCount(fact.value()) ? 1 : 0)
        : Derivability.Item.unshown(name, value);
  }

  /** A cell that is under no agreement may be told at any time. */
  private Derivability.Item item(String name, Cells.Cell cell, boolean secret) {
    double value = cell.exact();
    return secret
        ? Derivability.Item.withheld(name, value)
        : sight.allows(cell.label())
            ? Derivability.Item.printed(
                name, value, cell.value().coherent(), cell.step(), style.show(cell.value()))
            : Derivability.Item.unshown(name, value);
  }

  /** The cells that formulas take figures from, or that tell what others come to. */
  private Map<String, Cells.Cell> cells(List<Derivability.Relation> relations) {
    Map<String, Cells.Cell> found = new TreeMap<>();
    for (Derivability.Relation relation : relations) {
      Set<String> names = new TreeSet<>(Formula.names(relation.formula()));
      names.add(relation.name());
      for (String name : names) {
        cells.find(name).ifPresent(cell -> found.put(name, cell));
      }
    }
    return found;
  }

  private Label label(String name) {
    return facts
        .find(name)
        .map(Fact::label)
        .or(() -> cells.find(name).map(Cells.Cell::label))
        .orElseThrow();
  }

  private Place place(String name) {
    return facts
        .find(name)
        .map(Fact::place)
        .or(() -> cells.find(name).map(Cells.Cell::place))
        .orElseThrow();
  }

  /** Whether a quantity is likely to be counted: readers then try whole numbers alone. */
  private static boolean isCount(Quantity value) {
    return value.unit().equals(Unit.ONE) && value.value().stripTrailingZeros().scale() <= 0;
  }

  /** A plan that is withheld while what was measured is shown and came out as planned. */
  private Optional<Problem> plan(String name) {
    Fact plan = facts.find(name).orElseThrow();
    if (!(plan.id() instanceof FactId.Planned planned)) {
      return Optional.empty();
    }
    String measured = planned.of().name();
    return facts
        .find(measured)
        .filter(f -> shown.containsKey(f.name()))
        .filter(f -> Math.abs(f.value().coherent() / plan.value().coherent() - 1) <= closeness())
        .map(
            f ->
                Problem.error(
                    plan.place(),
                    Sentence.of(
                        "\u201c{0}\u201d is shown as measured, and it came out as planned, which is withheld.",
                        measured),
                    Sentence.of(
                        "Put the measurement under the agreement too, or record a release of \u201c{0}\u201d.",
                        name)));
  }

  /**
   * A total that lies in one of its cells alone, as all who are married may work full time: then
   * all that is withheld of it lies there too (group disclosure; Handbook on Statistical Disclosure
   * Control, 2nd edition, chapter 5).
   */
  private Optional<Problem> group(FactId total, Predicate<FactId> isCell) {
    Fact whole = facts.find(total).orElse(null);
    if (whole == null || !shown.containsKey(whole.name()) || sight.allows(whole.label())) {
      return Optional.empty();
    }
    List<Fact> filled =
        facts.byName().values().stream()
            .filter(f -> isCell.test(f.id()) && shown.containsKey(f.name()))
            .filter(f -> f.value().value().signum() != 0)
            .toList();
    return filled.size() == 1 && filled.get(0).value().compareTo(whole.value()) == 0
        ? Optional.of(
            Problem.reminder(
                filled.get(0).place(),
                Sentence.of(
                    "All of \u201c{0}\u201d lies in \u201c{1}\u201d, and both were released: so all that is withheld of it lies there.",
                    whole.name(), filled.get(0).name()),
                "Take back one of the two releases if that tells too much."))
        : Optional.empty();
  }

  private double closeness() {
    return log.head().closeness().doubleValue();
  }

  /** Of what could be withheld as well, what is not out already. */
  private List<Set<String>> remedies(Derivability.Verdict verdict, Set<String> out) {
    return verdict.remedies().stream()
        .filter(s -> s.stream().noneMatch(n -> out.contains(n) || sums.contains(n)))
        .limit(3)
        .toList();
  }

  /** Of figures that the same shown ones give away: the cause first, then the ways out. */
  private Problem problem(List<Derivability.Verdict> same, Set<String> out) {
    // What the maker wrote is known to him better than what the program works out.
    Derivability.Verdict first =
        same.stream()
            .filter(v -> facts.find(v.name()).filter(f -> f.id().isOfTheBooks()).isEmpty())
            .findFirst()
            .orElse(same.get(0));
    List<String> names = same.stream().map(Derivability.Verdict::name).toList();
    GivenAway given = new GivenAway(first, names, remedies(first, out));
    Place place = place(first.name());
    if (cells.find(first.name()).isPresent()) {
      return Problem.error(place, given.what(), given.remedyOfCell());
    }
    Problem problem = Problem.error(place, given.what(), given.remedy());
    waysOut.add(new Withholder.WayOut(problem, names, label(first.name()), given.remedies()));
    return problem;
  }

  /** The figures shown, as printed. */
  List<PrintedFigure> printed() {
    return figures.shown().stream()
        .flatMap(name -> told.find(name).stream())
        .map(
            f ->
                new PrintedFigure(
                    own.id(),
                    asOf,
                    f.name(),
                    style.show(figures.value(f)),
                    f.value().coherent(),
                    figures.step(f).coherent()))
        .toList();
  }

  /** What is withheld now but was printed before cannot be taken back. */
  private Problem alreadyOut(String name, PrintedFigure out, Set<String> unaware) {
    Set<String> all = log.readers().stream().map(Readers::id).collect(Collectors.toSet());
    String who =
        given.stream()
            .filter(g -> g.quantity().equals(name))
            .map(g -> g.figure().readers())
            .filter(r -> unaware.contains(r) || !all.contains(r))
            .distinct()
            .sorted()
            .collect(Collectors.joining(", "));
    return Problem.reminder(
        facts.find(name).orElseThrow().place(),
        Sentence.of(
            "\u201c{0}\u201d is withheld, but {1} is already out since {2} for {3}.",
            name, out.printed(), out.since(), who),
        "It cannot be taken back; tell the other party, or record a release.");
  }
}
