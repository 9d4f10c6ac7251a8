package chinelog.withhold;

import chinelog.log.Log;
import chinelog.problem.Problem;
import chinelog.quantity.NumberStyle;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.reckon.Expression;
import chinelog.reckon.Fact;
import chinelog.reckon.Facts;
import chinelog.reckon.Similitude;
import chinelog.withhold.derive.Derivability;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Asks whether the figures that an edition shows give away one that it withholds, through the
 * relations that the log itself holds: its formulas and sums, and full size = model × scale.
 */
final class Disclosure {

  private final Log log;
  private final Facts facts;
  private final FigureMaker figures;
  private final NumberStyle plain;
  private final Map<String, List<PrintedFigure>> known = new HashMap<>();

  /**
   * @param known figures that the readers were given before
   */
  Disclosure(Log log, Facts facts, FigureMaker figures, List<PrintedFigure> known) {
    this.log = log;
    this.facts = facts;
    this.figures = figures;
    known.forEach(k -> this.known.computeIfAbsent(k.fact(), n -> new ArrayList<>()).add(k));
    this.plain = new NumberStyle(Locale.ROOT, log.head().inchDenominator());
  }

  /** An error for each withheld figure that can be worked out. */
  List<Problem> problems() {
    Set<String> hidden = figures.hidden();
    if (hidden.isEmpty()) {
      return List.of();
    }
    List<Derivability.Item> items = new ArrayList<>();
    facts.byName().values().forEach(f -> items.add(item(f, hidden)));
    List<Problem> problems = new ArrayList<>(alreadyOut(hidden));
    for (Derivability.Verdict verdict :
        Derivability.check(
            items, relations(), log.head().closeness().doubleValue(), Quantity::coherent)) {
      if (verdict.answer() != Derivability.Answer.SAFE) {
        facts.find(verdict.name()).ifPresent(f -> problems.add(problem(f, verdict)));
      }
    }
    return problems;
  }

  /** Of what could be withheld as well, what is not out already. */
  private List<Set<String>> remedies(Derivability.Verdict verdict) {
    return verdict.remedies().stream()
        .filter(s -> s.stream().allMatch(n -> facts.find(n).flatMap(this::findKnown).isEmpty()))
        .limit(3)
        .toList();
  }

  private Problem problem(Fact fact, Derivability.Verdict verdict) {
    List<Set<String>> remedies = remedies(verdict);
    String how =
        verdict.answer() == Derivability.Answer.DERIVABLE
            ? verdict.path()
            : "\u201c" + fact.name() + "\u201d might be worked out: " + verdict.path();
    String remedy =
        remedies.isEmpty()
            ? "Record a release of it, or put more of what it is worked out from under the"
                + " agreement."
            : "Record a release of it, or withhold "
                + String.join(", or ", remedies.stream().map(s -> String.join(" and ", s)).toList())
                + " as well.";
    return Problem.error(fact.place(), how, remedy);
  }

  /** The figures shown, as printed. */
  List<PrintedFigure> printed(LocalDate day) {
    return figures.shown().stream()
        .flatMap(name -> facts.find(name).stream())
        .map(
            f ->
                new PrintedFigure(
                    day,
                    f.name(),
                    figures.style().show(f.value()),
                    f.value().coherent(),
                    step(f.value()).coherent()))
        .toList();
  }

  /** The finest figure that tells today's value of a fact and that the readers have already. */
  private Optional<PrintedFigure> findKnown(Fact fact) {
    return known.getOrDefault(fact.name(), List.of()).stream()
        .filter(k -> k.tells(fact.value().coherent()))
        .min(Comparator.comparingDouble(PrintedFigure::step).thenComparing(PrintedFigure::since));
  }

  /** What is withheld now but was printed before cannot be taken back. */
  private List<Problem> alreadyOut(Set<String> hidden) {
    List<Problem> problems = new ArrayList<>();
    for (String name : hidden) {
      facts
          .find(name)
          .flatMap(this::findKnown)
          .ifPresent(
              k ->
                  problems.add(
                      Problem.reminder(
                          facts.find(name).orElseThrow().place(),
                          "\u201c"
                              + name
                              + "\u201d is withheld, but "
                              + k.printed()
                              + " is already out since "
                              + k.since()
                              + ".",
                          "It cannot be taken back; tell the other party, or record a release.")));
    }
    return problems;
  }

  private Derivability.Item item(Fact fact, Set<String> hidden) {
    double value = fact.value().coherent();
    Optional<PrintedFigure> out = findKnown(fact);
    if (out.isPresent() && !figures.shown().contains(fact.name())) {
      PrintedFigure k = out.get();
      return Derivability.Item.printed(
          fact.name(),
          value,
          k.value(),
          k.step(),
          k.printed() + " (already out since " + k.since() + ")");
    }
    if (hidden.contains(fact.name()) && !isBookkeeping(fact.name())) {
      return Derivability.Item.withheld(fact.name(), value);
    }
    if (!figures.shown().contains(fact.name())) {
      return Derivability.Item.unshown(fact.name(), value);
    }
    String shown = figures.style().show(fact.value());
    Quantity step = step(fact.value());
    // A figure is printed to the nearest step, so what its digits tell is within half of one.
    return Derivability.Item.printed(fact.name(), value, value, step.coherent(), shown);
  }

  /**
   * Figures that are never shown and that no agreement is about: sums that measure the build
   * against its plan, under every agreement of every entry so as to be on the safe side; and what
   * is left of the price paid, which is nothing for every lot used up.
   */
  private static boolean isBookkeeping(String name) {
    return name.startsWith("plan.") && !name.startsWith("plan.hours.")
        || name.startsWith("stock.") && name.endsWith(".worth");
  }

  /** The value of the last digit that is printed. */
  private Quantity step(Quantity quantity) {
    Unit unit = quantity.unit();
    if (unit.isMoney()) {
      return Quantity.of(new BigDecimal("0.01"), unit);
    }
    if (unit.isCompatible(Unit.MINUTE)) {
      return Quantity.of(1, Unit.MINUTE);
    }
    String text =
        plain
            .showValue(quantity)
            .replaceAll("[≈,]", "")
            .replace('\u202f', ' ')
            .replace('\u2212', '-')
            .replace('\u2044', '/')
            .strip();
    try {
      return Quantity.lastDigit(text);
    } catch (QuantityException e) {
      // A form that cannot be read back counts as exact, which is on the safe side.
      return Quantity.of(0, unit);
    }
  }

  private List<Derivability.Relation> relations() {
    List<Derivability.Relation> relations = new ArrayList<>();
    Set<String> known = facts.byName().keySet();
    for (Fact fact : facts.byName().values()) {
      Expression formula = fact.formula();
      if (formula != null && Names.in(formula).stream().allMatch(known::contains)) {
        relations.add(new Derivability.Relation(fact.name(), formula));
      }
    }
    facts.find("scale").ifPresent(scale -> addScaled(scale, relations));
    return relations;
  }

  /** Full size = model × scale, for facts whose names pair them and no formula does. */
  private void addScaled(Fact scale, List<Derivability.Relation> relations) {
    Counterparts counterparts = new Counterparts(facts);
    Set<Set<String>> paired = new HashSet<>();
    relations.forEach(r -> Names.in(r.formula()).forEach(n -> paired.add(Set.of(r.name(), n))));
    for (Map.Entry<String, Fact> entry : facts.byName().entrySet()) {
      if (!entry.getKey().startsWith("full.")) {
        continue;
      }
      for (String model : counterparts.of(entry.getKey())) {
        facts
            .find(model)
            .filter(f -> f.value().unit().isCompatible(entry.getValue().value().unit()))
            .filter(f -> !paired.contains(Set.of(entry.getKey(), model)))
            .filter(f -> agree(f, entry.getValue(), scale))
            .ifPresent(
                f ->
                    relations.add(
                        new Derivability.Relation(
                            entry.getKey(), scaled(model, power(f.value())))));
      }
    }
  }

  /** Whether a model's fact is its full-size namesake to scale, within the log's closeness. */
  private boolean agree(Fact model, Fact full, Fact scale) {
    return Similitude.findFullSize(model.value(), scale.value())
        .map(f -> Math.abs(f.coherent() / full.value().coherent() - 1))
        .filter(error -> error <= log.head().closeness().doubleValue())
        .isPresent();
  }

  private static int power(Quantity model) {
    return Similitude.findFullSize(model, Quantity.of(2, Unit.ONE))
        .map(f -> (int) Math.round(Math.log(f.coherent() / model.coherent()) / Math.log(2)))
        .orElse(1);
  }

  private static Expression scaled(String model, int power) {
    Expression product = new Expression.Name(model);
    for (int i = 0; i < power; i++) {
      product = new Expression.Binary('*', product, new Expression.Name("scale"));
    }
    return product;
  }
}
