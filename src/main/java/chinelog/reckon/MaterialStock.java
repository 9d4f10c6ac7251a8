package chinelog.reckon;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Lot;
import chinelog.log.records.Marked;
import chinelog.log.records.Valuation;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.reckon.formula.Expression;
import chinelog.wording.Message;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** The lots of one material, and what is taken from them. */
final class MaterialStock {

  /**
   * What is left of a lot.
   *
   * @param price name of the fact with its price; null where none is known
   */
  private record Rest(
      String bought, @Nullable String price, @Nullable LocalDate date, Quantity left) {}

  private record Delivery(Lot lot, @Nullable Marked<Quantity> price) {}

  private final String material;
  private final Ledger ledger;
  private final List<Delivery> deliveries = new ArrayList<>();
  private final Deque<Rest> rests = new ArrayDeque<>();
  private final List<String> boughtFacts = new ArrayList<>();
  private final List<String> priceFacts = new ArrayList<>();
  private final List<String> usedFacts = new ArrayList<>();
  private final List<String> wastedFacts = new ArrayList<>();
  private final List<String> costFacts = new ArrayList<>();
  private Label label = Label.NONE;

  /**
   * Agreements of all that was taken so far: where there are several lots, it decides from which of
   * them the next is taken, and so what it costs.
   */
  private Label taken = Label.NONE;

  private boolean everyCostKnown = true;

  private final Valuation valuation;
  private @Nullable AveragePool pool;

  MaterialStock(String material, Ledger ledger, Valuation valuation) {
    this.material = material;
    this.ledger = ledger;
    this.valuation = valuation;
  }

  void add(Lot lot, @Nullable Marked<Quantity> price) {
    deliveries.add(new Delivery(lot, price));
    label = label.join(lot.label());
  }

  /** Of the material; under the agreements of all its lots. */
  Label label() {
    return label;
  }

  String title() {
    return deliveries.get(0).lot.title();
  }

  /** Puts the lots in the order bought; one without a date was there from the start. */
  void open() {
    deliveries.sort(
        Comparator.comparing(d -> d.lot.date(), Comparator.nullsFirst(Comparator.naturalOrder())));
    int number = 0;
    for (Delivery delivery : deliveries) {
      open(delivery.lot, delivery.price, ++number);
    }
    if (valuation == Valuation.AVERAGE) {
      Lot first = deliveries.get(0).lot;
      pool = new AveragePool(material, title(), ledger, first.bought().unit(), first.place());
    }
  }

  private void open(Lot lot, @Nullable Marked<Quantity> price, int number) {
    FactId bought = new FactId.Lot(material, number, false);
    FactId paid = new FactId.Lot(material, number, true);
    Unit unit = deliveries.get(0).lot.bought().unit();
    if (!lot.bought().unit().isCompatible(unit) || lot.bought().value().signum() <= 0) {
      ledger.error(
          lot.place(),
          Sentence.of("This lot of \"{0}\" is {1}.", material, lot.bought()),
          Sentence.of(
              unit.symbol().isEmpty()
                  ? "Write an amount above 0 in the unit of the first lot."
                  : "Write an amount above 0 in the unit of the first lot, {0}.",
              unit));
      return;
    }
    ledger.given(
        bought,
        Message.of("stock.lot.bought", lot.title()),
        lot.bought(),
        Origin.COUNTED,
        lot.date(),
        lot.label(),
        lot.place(),
        null);
    boughtFacts.add(bought.name());
    if (price != null) {
      ledger.given(
          paid,
          Message.of("stock.lot.price", lot.title()),
          price.value(),
          Origin.STATED,
          lot.date(),
          lot.label().join(price.label()),
          price.place(),
          null);
      priceFacts.add(paid.name());
    }
    rests.add(
        new Rest(bought.name(), price == null ? null : paid.name(), lot.date(), lot.bought()));
  }

  /** Takes an amount and yields the name of the fact with its cost, or null if none is known. */
  @Nullable String take(Entry.Use use, String amountFact, Entry entry, FactId costId) {
    try {
      if (use.amount().value().signum() < 0) {
        throw new QuantityException(
            "An amount used cannot be negative.", "Write what was used up.", 0);
      }
      usedFacts.add(amountFact);
      if (use.where().strip().equalsIgnoreCase("waste")) {
        wastedFacts.add(amountFact);
      }
      taken = taken.join(entry.label()).join(use.label());
      AveragePool average = pool;
      return average == null
          ? takeInOrder(use, amountFact, entry, costId)
          : takeAtAverage(average, use, amountFact, entry, costId);
    } catch (QuantityException e) {
      ledger.error(use.place(), Sentence.of("\"{0}\": {1}", material, e.what()), e.remedy());
      everyCostKnown = false;
      return null;
    }
  }

  private @Nullable String takeInOrder(Entry.Use use, String amountFact, Entry entry, FactId costId)
      throws QuantityException {
    Quantity wanted = use.amount();
    List<Expression> costs = new ArrayList<>();
    List<String> inputs = new ArrayList<>();
    boolean priced = true;
    boolean late = false;
    boolean done = wanted.value().signum() == 0;
    while (!done) {
      Rest rest = rests.poll();
      if (rest == null) {
        askWhatWasBought(use, wanted);
        return noCost();
      }
      late |= rest.date != null && rest.date.isAfter(entry.date());
      boolean emptied = isMore(wanted, rest.left);
      boolean whole = !emptied && costs.isEmpty();
      Quantity part = emptied ? rest.left : wanted;
      priced &= rest.price != null;
      if (rest.price != null) {
        costs.add(cost(rest, rest.price, whole ? amountFact : null, part, inputs));
      }
      if (emptied) {
        wanted = wanted.minus(rest.left);
      } else {
        done = true;
        if (isMore(rest.left, wanted)) {
          rests.push(new Rest(rest.bought, rest.price, rest.date, rest.left.minus(wanted)));
        }
      }
    }
    if (late) {
      remindOfDates(use, entry);
    }
    return priced && !costs.isEmpty() ? enter(costs, inputs, use, entry, costId) : noCost();
  }

  /** Either the amount is wrong, or a lot is not written down yet: only the maker knows. */
  private void askWhatWasBought(Entry.Use use, Quantity missing) {
    ledger.question(
        use.place(),
        Sentence.of(
            "\"{0}\": {1} are used, and of that stock.yaml has no lot for {2}. Were"
                + " more bought?",
            material, use.amount(), missing),
        "Add the lot to stock.yaml, without a price if you do not know it; or correct the amount.");
  }

  private void remindOfDates(Entry.Use use, Entry entry) {
    ledger.reminder(
        use.place(),
        Sentence.of("\"{0}\" is used on {1} before it was bought.", material, entry.date()),
        "Check the dates of the entry and of the lot.");
  }

  private @Nullable String takeAtAverage(
      AveragePool average, Entry.Use use, String amountFact, Entry entry, FactId costId)
      throws QuantityException {
    List<AveragePool.Coming> coming = new ArrayList<>();
    Quantity held = average.left();
    boolean late = false;
    for (Rest next = rests.peek(); next != null; next = rests.peek()) {
      boolean ahead = next.date != null && next.date.isAfter(entry.date());
      if (ahead && !isMore(use.amount(), held)) {
        break;
      }
      late |= ahead;
      held = held.plus(next.left);
      coming.add(new AveragePool.Coming(next.bought, next.price, next.left));
      rests.remove();
    }
    if (isMore(use.amount(), held)) {
      askWhatWasBought(use, use.amount().minus(held));
      average.add(coming, entry.date(), taken);
      return noCost();
    }
    if (late) {
      remindOfDates(use, entry);
    }
    average.add(coming, entry.date(), taken);
    String price = average.take(use.amount(), amountFact);
    if (price == null) {
      return noCost();
    }
    Expression cost =
        new Expression.Binary('*', new Expression.Name(price), new Expression.Name(amountFact));
    return enter(List.of(cost), List.of(price, amountFact), use, entry, costId);
  }

  /** Whether one amount is more than another, 25 digits being enough for any workshop. */
  private static boolean isMore(Quantity amount, Quantity than) throws QuantityException {
    BigDecimal over = amount.minus(than).value();
    return over.compareTo(amount.value().abs().movePointLeft(25)) > 0;
  }

  private @Nullable String noCost() {
    everyCostKnown = false;
    return null;
  }

  /** Price of the lot, times the part of it that was used. */
  private Expression cost(
      Rest rest, String price, @Nullable String amountFact, Quantity part, List<String> inputs) {
    Expression amount =
        amountFact == null ? new Expression.Literal(part) : new Expression.Name(amountFact);
    inputs.add(price);
    if (amountFact != null) {
      inputs.add(amountFact);
    }
    inputs.add(rest.bought);
    return new Expression.Binary(
        '/',
        new Expression.Binary('*', new Expression.Name(price), amount),
        new Expression.Name(rest.bought));
  }

  private String enter(
      List<Expression> costs, List<String> inputs, Entry.Use use, Entry entry, FactId costId) {
    Expression tree = costs.size() == 1 ? costs.get(0) : new Expression.Call("sum", costs);
    ledger.reckoned(
        costId,
        Message.of("stock.cost.on", title(), entry.date()),
        tree,
        inputs,
        (deliveries.size() > 1 ? taken : entry.label().join(use.label())).join(label),
        use.place(),
        entry.id());
    costFacts.add(costId.name());
    return costId.name();
  }

  Facts.MaterialSum close() {
    FactId bought = id(FactId.Balance.BOUGHT);
    FactId used = id(FactId.Balance.USED);
    FactId left = id(FactId.Balance.LEFT);
    FactId paid = id(FactId.Balance.PAID);
    FactId cost = id(FactId.Balance.COST);
    sum(bought, "stock.bought", boughtFacts);
    if (usedFacts.isEmpty()) {
      Unit unit = deliveries.get(0).lot.bought().unit();
      ledger.given(
          used,
          Message.of("stock.used", title()),
          Quantity.of(0, unit),
          Origin.COUNTED,
          null,
          label,
          place(),
          null);
    } else {
      sum(used, "stock.used", usedFacts);
    }
    if (!wastedFacts.isEmpty()) {
      FactId wasted = id(FactId.Balance.WASTED);
      sum(wasted, "stock.wasted", wastedFacts);
      if (ledger.require(used.name()).value().value().signum() > 0) {
        from(id(FactId.Balance.WASTAGE), "stock.wastage", wasted, '/', used);
      }
    }
    if (ledger.has(bought) && ledger.has(used)) {
      from(left, "stock.left", bought, '-', used);
    }
    boolean allPriced = priceFacts.size() == deliveries.size();
    if (allPriced) {
      sum(paid, "stock.paid", priceFacts);
    }
    if (everyCostKnown) {
      sum(cost, "stock.cost", costFacts);
    }
    if (allPriced && ledger.has(cost)) {
      from(id(FactId.Balance.WORTH), "stock.worth", paid, '-', cost);
    }
    TreeSet<String> hazards = new TreeSet<>();
    deliveries.forEach(d -> hazards.addAll(d.lot.hazards()));
    String repair =
        deliveries.stream()
            .map(d -> d.lot.repair())
            .filter(r -> !r.isEmpty())
            .findFirst()
            .orElse("");
    return new Facts.MaterialSum(
        material, title(), List.copyOf(hazards), repair, bought.name(), left.name(), label);
  }

  private FactId id(FactId.Balance balance) {
    return new FactId.Stock(material, balance);
  }

  private Place place() {
    return deliveries.get(0).lot.place();
  }

  private void sum(FactId id, String title, List<String> parts) {
    ledger.sum(id, Message.of(title, title()), parts, label, place());
  }

  private void from(FactId id, String title, FactId a, char operator, FactId b) {
    Expression tree =
        new Expression.Binary(
            operator, new Expression.Name(a.name()), new Expression.Name(b.name()));
    ledger.reckoned(id, Message.of(title, title()), tree, label, place());
  }
}
