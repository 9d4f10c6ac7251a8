package chinelog.withhold;

import chinelog.edition.Edition;
import chinelog.label.Presence;
import chinelog.log.records.Entry;
import chinelog.reckon.Facts;
import chinelog.withhold.question.Sight;
import chinelog.wording.Catalogue;
import java.text.Collator;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Materials as used by the entries that are told, with what they cost. */
final class MaterialsTold {

  /** What is met when the model is used, the worst last; all else is met when it is built. */
  private static final List<String> OWNING_FIRST = List.of("lead", "lithium");

  private final Facts facts;
  private final FigureMaker figures;
  private final Sight sight;
  private final Catalogue words;
  private final Locale locale;
  private final List<Facts.UseCost> uses;

  /**
   * @param entries those that are told
   */
  MaterialsTold(
      VisibleLog visible, List<Entry> entries, FigureMaker figures, Sight sight, Catalogue words) {
    this.facts = visible.facts();
    this.figures = figures;
    this.sight = sight;
    this.words = words;
    this.locale = visible.log().head().locale();
    Set<String> told = entries.stream().map(Entry::id).collect(Collectors.toSet());
    Set<String> hidden =
        facts.materials().stream()
            .filter(m -> !sight.allows(m.label()))
            .map(Facts.MaterialSum::material)
            .collect(Collectors.toSet());
    this.uses =
        facts.uses().stream()
            .filter(u -> told.contains(u.entry()) && !hidden.contains(u.material()))
            .toList();
  }

  /** What an entry used. */
  List<Edition.Line> lines(Entry entry) {
    List<Edition.Line> lines = new ArrayList<>();
    for (Facts.UseCost use : uses) {
      if (use.entry().equals(entry.id())) {
        figures
            .show(use.amountFact())
            .ifPresent(
                amount ->
                    lines.add(
                        new Edition.Line(
                            use.title(), amount, figures.show(use.costFact()).orElse(""), null)));
      }
    }
    return lines;
  }

  /** What was spent on the material of some entries, as a line; empty if no cost is seen. */
  Optional<Edition.Line> costLine(Predicate<String> entries) {
    return cost(u -> entries.test(u.entry()))
        .map(c -> new Edition.Line(words.text("line.cost"), c, "", null));
  }

  String totalCost() {
    return cost(u -> true).orElse("");
  }

  private Optional<String> cost(Predicate<Facts.UseCost> which) {
    return figures
        .sum(
            uses.stream()
                .filter(which)
                .flatMap(u -> Optional.ofNullable(u.costFact()).stream())
                .toList())
        .map(figures.style()::show);
  }

  /** What stands for a cost under an agreement that is noted where it withholds. */
  private Optional<String> unseenCost(Predicate<Facts.UseCost> which) {
    return uses.stream()
        .filter(which)
        .flatMap(u -> Stream.ofNullable(u.costFact()))
        .flatMap(cost -> figures.findUnseen(cost).stream())
        .filter(label -> sight.presence(label) == Presence.NOTE)
        .findFirst()
        .map(label -> words.text("cost.withheld"));
  }

  /** Every material that may be seen, in the order of what it is called. */
  List<Edition.MaterialLine> table() {
    List<Edition.MaterialLine> lines = new ArrayList<>();
    for (Facts.MaterialSum material : facts.materials()) {
      if (!sight.allows(material.label())) {
        continue;
      }
      Predicate<Facts.UseCost> own = u -> u.material().equals(material.material());
      String used =
          figures
              .sum(uses.stream().filter(own).map(Facts.UseCost::amountFact).toList())
              .map(figures.style()::show)
              .orElse("");
      lines.add(
          new Edition.MaterialLine(
              material.title(),
              figures.show(material.boughtFact()).orElse(""),
              used,
              figures.show(material.leftFact()).orElse(""),
              cost(own).or(() -> unseenCost(own)).orElse(""),
              material.repair(),
              sight.under(material.label())));
    }
    Collator order = Collator.getInstance(locale);
    lines.sort(
        Comparator.comparing(Edition.MaterialLine::title, order)
            .thenComparing(Edition.MaterialLine::title));
    return lines;
  }

  /** The usual cautions for every material that may be seen, those of owning the model first. */
  List<Edition.Caution> cautions() {
    Set<String> seen = new HashSet<>();
    return facts.materials().stream()
        .filter(m -> sight.allows(m.label()))
        .flatMap(m -> m.hazards().stream())
        .filter(seen::add)
        .sorted(
            Comparator.<String>comparingInt(h -> -OWNING_FIRST.indexOf(h)).thenComparing(h -> h))
        .filter(h -> words.find("caution." + h).isPresent())
        .map(
            h ->
                new Edition.Caution(
                    words.text("caution." + h + ".title"),
                    words.text("caution." + h) + " " + words.text("caution.more")))
        .toList();
  }
}
