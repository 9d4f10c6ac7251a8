package chinelog.withhold;

import chinelog.edition.Edition;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.Stage;
import chinelog.quantity.Quantity;
import chinelog.reckon.Fact;
import chinelog.reckon.FactId;
import chinelog.reckon.Facts;
import chinelog.wording.Catalogue;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Hours, added up over the entries that are told: whether there are others does not show in them.
 */
final class HoursTold {

  private static final String ALL_STAGES = "*";

  private final Log log;
  private final Facts facts;
  private final FigureMaker figures;
  private final Account account;
  private final Catalogue words;
  private final Map<String, Quantity> byEntry = new HashMap<>();
  private final Map<String, Quantity> stageSoFar = new HashMap<>();
  private final Map<String, Quantity> allSoFar = new HashMap<>();
  private final Map<String, Quantity> byStage = new TreeMap<>();

  /**
   * @param entries those that are told, by date
   */
  HoursTold(
      VisibleLog visible,
      List<Entry> entries,
      FigureMaker figures,
      Account account,
      Catalogue words) {
    this.log = visible.log();
    this.facts = visible.facts();
    this.figures = figures;
    this.account = account;
    this.words = words;
    Map<String, List<Facts.DayHours>> days =
        facts.hoursByDay().stream().collect(Collectors.groupingBy(Facts.DayHours::entry));
    Map<String, List<String>> parts = new HashMap<>();
    for (Entry entry : entries) {
      List<String> names =
          days.getOrDefault(entry.id(), List.of()).stream().map(Facts.DayHours::fact).toList();
      figures.sum(names).ifPresent(own -> add(entry, own));
      for (String sum : List.of(entry.stage(), ALL_STAGES)) {
        names.stream()
            .filter(n -> figures.find(n).isPresent())
            .forEach(n -> parts.computeIfAbsent(sum, s -> new ArrayList<>()).add(n));
      }
    }
    byStage.forEach((stage, sum) -> figures.addedUp(parts.getOrDefault(stage, List.of()), sum));
  }

  private void add(Entry entry, Quantity own) {
    byEntry.put(entry.id(), own);
    stageSoFar.put(entry.id(), byStage.merge(entry.stage(), own, Quantities::plus));
    allSoFar.put(entry.id(), byStage.merge(ALL_STAGES, own, Quantities::plus));
  }

  /** Hours of an entry, of its stage up to it, and of all up to it. */
  List<Edition.Line> lines(Entry entry) {
    List<Edition.Line> lines = new ArrayList<>();
    line("line.hours.day", byEntry.get(entry.id())).ifPresent(lines::add);
    if (!entry.stage().isEmpty()) {
      line("line.hours.stage", stageSoFar.get(entry.id())).ifPresent(lines::add);
    }
    line("line.hours.sofar", allSoFar.get(entry.id())).ifPresent(lines::add);
    return lines;
  }

  private Optional<Edition.Line> line(
      String key, @org.jspecify.annotations.Nullable Quantity hours) {
    return Optional.ofNullable(hours)
        .map(h -> new Edition.Line(words.text(key), figures.style().show(h), "", null));
  }

  Optional<Edition.Line> stageLine(String stage) {
    return line("line.hours", byStage.get(stage));
  }

  Optional<Edition.Line> totalLine() {
    return line("line.hours", byStage.get(ALL_STAGES));
  }

  /** A sum of hours as far as it is told here, in words that say so; empty for all else. */
  Optional<String> told(FactId id) {
    if (!(id instanceof FactId.Hours sum)) {
      return Optional.empty();
    }
    Quantity told =
        switch (sum.span()) {
          case STAGE -> byStage.get(sum.of());
          case TOTAL -> byStage.get(ALL_STAGES);
          case ENTRY, WEEK -> null;
        };
    return Optional.ofNullable(told).map(t -> words.text("hours.as.told", figures.style().show(t)));
  }

  /** Planned and worked hours by stage, for the stages that may be seen and have either. */
  List<ChartMaker.StageHours> byStage() {
    List<ChartMaker.StageHours> lines = new ArrayList<>();
    for (Stage stage : log.stages()) {
      if (!account.sees(stage.label(), stage.place(), Register.Kind.STAGE, stage.id())) {
        continue;
      }
      Optional<Fact> plan =
          figures.find(new FactId.PlannedHours(FactId.Span.STAGE, stage.id()).name());
      String planned = plan.map(figures::show).orElse("");
      Optional<Quantity> worked = Optional.ofNullable(byStage.get(stage.id()));
      if (plan.isPresent() || worked.isPresent()) {
        lines.add(
            new ChartMaker.StageHours(
                new Edition.HoursLine(
                    stage.id(),
                    stage.title(),
                    planned,
                    worked.map(figures.style()::show).orElse("")),
                plan.map(Fact::value),
                worked));
      }
    }
    return lines;
  }
}
