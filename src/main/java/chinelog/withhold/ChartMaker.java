package chinelog.withhold;

import chinelog.edition.Chart;
import chinelog.edition.Edition;
import chinelog.log.records.Entry;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.reckon.Fact;
import chinelog.reckon.FactId;
import chinelog.reckon.Facts;
import chinelog.wording.Catalogue;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * Draws up the numbers of charts from facts that the readers see, and from no others.
 *
 * @param entries those that are told, by date
 */
record ChartMaker(VisibleLog visible, FigureMaker figures, Catalogue words, List<Entry> entries) {

  /**
   * The charts for which there are numbers.
   *
   * @param hours hours worked by stage as the edition tells them, in its order
   */
  List<Chart> charts(List<StageHours> hours) {
    List<Chart> charts = new ArrayList<>();
    hoursByStage(hours).ifPresent(charts::add);
    progress().ifPresent(charts::add);
    massGrowth().ifPresent(charts::add);
    cost().ifPresent(charts::add);
    return List.copyOf(charts);
  }

  /** A stage's hours; either may be missing. */
  record StageHours(
      Edition.HoursLine line, Optional<Quantity> planned, Optional<Quantity> worked) {}

  private Optional<Chart> hoursByStage(List<StageHours> hours) {
    List<StageHours> told = hours.stream().filter(h -> h.worked().isPresent()).toList();
    if (told.size() < 2) {
      return Optional.empty();
    }
    List<Chart.Series> series = new ArrayList<>();
    series.add(series("chart.hours.worked", told, h -> h.worked().orElseThrow()));
    if (told.stream().allMatch(h -> h.planned().isPresent())) {
      series.add(series("chart.hours.planned", told, h -> h.planned().orElseThrow()));
    }
    return Optional.of(
        new Chart(
            "hours-by-stage",
            Chart.Kind.BARS,
            words.text("chart.hours.title"),
            words.text("chart.hours.description"),
            Unit.HOUR.symbol(),
            told.stream().map(h -> h.line().title()).toList(),
            series));
  }

  private <T> Chart.Series series(String name, List<T> points, Function<T, Quantity> value) {
    List<Quantity> values = points.stream().map(value).toList();
    return new Chart.Series(
        words.text(name),
        values.stream().map(q -> rounded(q, Unit.HOUR, 2)).toList(),
        values.stream().map(figures.style()::show).toList());
  }

  private Optional<Chart> progress() {
    Map<LocalDate, Quantity> sums = new TreeMap<>();
    Quantity sofar = Quantity.of(0, Unit.HOUR);
    for (Facts.DayHours day : visible.facts().hoursByDay()) {
      Optional<Fact> fact = figures.find(day.fact());
      if (fact.isPresent()) {
        figures.show(fact.get());
        sofar = Quantities.plus(sofar, fact.get().value());
        sums.put(day.day(), sofar);
      }
    }
    if (sums.size() < 3) {
      return Optional.empty();
    }
    return Optional.of(
        new Chart(
            "hours-so-far",
            Chart.Kind.STEPS,
            words.text("chart.progress.title"),
            words.text("chart.progress.description"),
            Unit.HOUR.symbol(),
            sums.keySet().stream().map(LocalDate::toString).toList(),
            List.of(series("chart.progress.worked", List.copyOf(sums.values()), q -> q))));
  }

  private Optional<Chart> massGrowth() {
    List<Facts.MassPoint> points =
        visible.facts().massGrowth().stream()
            .filter(p -> figures.find(p.fact()).isPresent())
            .toList();
    if (points.size() < 3) {
      return Optional.empty();
    }
    Map<LocalDate, Fact> byDay = new TreeMap<>();
    points.forEach(p -> byDay.put(p.day(), figures.find(p.fact()).orElseThrow()));
    Unit unit = Unit.GRAM;
    List<Chart.Series> series = new ArrayList<>();
    series.add(
        new Chart.Series(
            words.text("chart.mass.weighed"),
            byDay.values().stream().map(f -> rounded(f.value(), unit, 0)).toList(),
            byDay.values().stream().map(figures::show).toList()));
    figures
        .find(FactId.MASS_BUDGET.name())
        .ifPresent(
            budget ->
                series.add(
                    new Chart.Series(
                        words.text("chart.mass.budget"),
                        byDay.keySet().stream().map(d -> rounded(budget.value(), unit, 0)).toList(),
                        byDay.keySet().stream().map(d -> figures.show(budget)).toList())));
    return Optional.of(
        new Chart(
            "growth-of-mass",
            Chart.Kind.STEPS,
            words.text("chart.mass.title"),
            words.text("chart.mass.description"),
            unit.symbol(),
            byDay.keySet().stream().map(LocalDate::toString).toList(),
            series));
  }

  /** What the materials used cost up to each day; in one currency, or not at all. */
  private Optional<Chart> cost() {
    Map<LocalDate, Quantity> sums = new TreeMap<>();
    Quantity sofar = null;
    for (Entry entry : entries) {
      for (Facts.UseCost use : visible.facts().uses()) {
        Optional<Fact> fact =
            use.entry().equals(entry.id()) ? figures.find(use.costFact()) : Optional.empty();
        if (fact.isEmpty()) {
          continue;
        }
        Quantity cost = fact.get().value();
        if (sofar != null && !cost.unit().isCompatible(sofar.unit())) {
          return Optional.empty();
        }
        figures.show(fact.get());
        sofar = sofar == null ? cost : Quantities.plus(sofar, cost);
        sums.put(entry.date(), sofar);
      }
    }
    if (sofar == null || sums.size() < 3) {
      return Optional.empty();
    }
    Unit unit = sofar.unit();
    List<Quantity> values = List.copyOf(sums.values());
    List<Chart.Series> series = new ArrayList<>();
    series.add(
        new Chart.Series(
            words.text("chart.cost.sofar"),
            values.stream().map(q -> rounded(q, unit, 2)).toList(),
            values.stream().map(figures.style()::show).toList()));
    figures
        .find(FactId.COST_BUDGET.name())
        .filter(budget -> budget.value().unit().isCompatible(unit))
        .ifPresent(
            budget ->
                series.add(
                    new Chart.Series(
                        words.text("chart.mass.budget"),
                        values.stream().map(d -> rounded(budget.value(), unit, 2)).toList(),
                        values.stream().map(d -> figures.show(budget)).toList())));
    return Optional.of(
        new Chart(
            "cost-so-far",
            Chart.Kind.STEPS,
            words.text("chart.cost.title"),
            words.text("chart.cost.description"),
            unit.symbol(),
            sums.keySet().stream().map(LocalDate::toString).toList(),
            series));
  }

  private static BigDecimal rounded(Quantity quantity, Unit unit, int decimals) {
    try {
      return quantity.valueIn(unit).setScale(decimals, RoundingMode.HALF_UP);
    } catch (QuantityException e) {
      throw new IllegalArgumentException(e.getMessage(), e);
    }
  }
}
