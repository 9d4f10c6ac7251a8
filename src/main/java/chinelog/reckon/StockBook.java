package chinelog.reckon;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.Lot;
import chinelog.log.records.Marked;
import chinelog.log.records.Stage;
import chinelog.problem.Place;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.quantity.Quantity;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Materials bought, used and left, and what was used cost. */
final class StockBook {

  private final Log log;
  private final Ledger ledger;
  private final Problems problems;
  private final SortedMap<String, MaterialStock> shelves = new TreeMap<>();
  private final List<Facts.UseCost> uses = new ArrayList<>();
  private final Map<String, List<String>> costsByEntry = new TreeMap<>();
  private final Map<String, List<String>> costsByStage = new TreeMap<>();

  StockBook(Log log, Ledger ledger) {
    this.log = log;
    this.ledger = ledger;
    this.problems = ledger.problems();
  }

  /** What was used, and what became of each material. */
  record Outcome(List<Facts.UseCost> uses, List<Facts.MaterialSum> materials) {}

  Outcome reckon() {
    log.stock().forEach(this::shelve);
    shelves.values().forEach(MaterialStock::open);
    for (Entry entry : log.entries()) {
      Map<String, Integer> seen = new TreeMap<>();
      for (Entry.Use use : entry.used()) {
        use(entry, use, seen.merge(use.material(), 1, Integer::sum));
      }
      costOf(entry);
    }
    costOfStages();
    List<Facts.MaterialSum> materials = new ArrayList<>();
    shelves.values().forEach(s -> materials.add(s.close()));
    return new Outcome(List.copyOf(uses), List.copyOf(materials));
  }

  private void shelve(Lot lot) {
    shelves
        .computeIfAbsent(lot.material(), m -> new MaterialStock(m, ledger, log.head().valuation()))
        .add(lot, isPriceGood(lot.price()) ? lot.price() : null);
  }

  private boolean isPriceGood(@Nullable Marked<Quantity> price) {
    if (price == null) {
      return false;
    }
    String currency = price.value().unit().currency();
    if (!log.head().currency().equals(price.value().unit().symbol())) {
      problems.error(
          price.place(),
          currency == null
              ? Sentence.of("The price {0} is not an amount of money.", price.value())
              : Sentence.of(
                  "This price is in {0}, but the log's money is {1}.",
                  price.value().unit(), log.head().currency()),
          Sentence.of("Write such as 21.60 {0}.", log.head().currency()));
      return false;
    }
    return true;
  }

  private void use(Entry entry, Entry.Use use, int count) {
    MaterialStock shelf = shelves.get(use.material());
    if (shelf == null && !log.stock().isEmpty()) {
      problems.error(
          use.place(),
          Sentence.of("\"{0}\" is used, but stock.yaml has no such material.", use.material()),
          Suggestion.remedy(use.material(), shelves.keySet()));
      return;
    }
    FactId id = new FactId.Use(use.material(), entry.id(), count);
    String amount = id.name();
    FactId costId = new FactId.UseCost(use.material(), entry.id(), count);
    Label label = entry.label().join(use.label()).join(shelf == null ? Label.NONE : shelf.label());
    String title = shelf == null ? Ledger.words(use.material()) : shelf.title();
    ledger.given(
        id,
        Message.of("stock.used.on", title, entry.date()),
        use.amount(),
        Origin.COUNTED,
        entry.date(),
        label,
        use.place(),
        entry.id());
    String cost = shelf == null ? null : shelf.take(use, amount, entry, costId);
    if (cost != null) {
      costsByEntry.computeIfAbsent(entry.id(), e -> new ArrayList<>()).add(cost);
    }
    uses.add(new Facts.UseCost(entry.id(), use.material(), title, amount, cost));
  }

  private void costOf(Entry entry) {
    List<String> costs = costsByEntry.get(entry.id());
    if (costs == null) {
      return;
    }
    FactId id = new FactId.Cost(FactId.Span.ENTRY, entry.id());
    ledger.sum(id, Message.of("cost.entry", entry.date()), costs, entry.label(), entry.place());
    costsByStage.computeIfAbsent(entry.stage(), s -> new ArrayList<>()).add(id.name());
  }

  private void costOfStages() {
    List<String> stages = new ArrayList<>();
    for (Stage stage : log.stages()) {
      List<String> costs = costsByStage.remove(stage.id());
      if (costs != null) {
        FactId id = new FactId.Cost(FactId.Span.STAGE, stage.id());
        ledger.sum(
            id, Message.of("cost.stage", stage.title()), costs, stage.label(), stage.place());
        stages.add(id.name());
      }
    }
    costsByStage.values().forEach(stages::addAll);
    ledger.sum(FactId.COST, Message.of("cost.total"), stages, Label.NONE, Place.of("stock.yaml"));
  }
}
