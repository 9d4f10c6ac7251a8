package chinelog.reckon;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Head;
import chinelog.log.records.Log;
import chinelog.log.records.Marked;
import chinelog.log.records.Request;
import chinelog.log.records.Sheet;
import chinelog.log.records.Statement;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.quantity.NumberStyle;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.reckon.formula.Expression;
import chinelog.reckon.formula.Formula;
import chinelog.reckon.trade.KeptResults;
import chinelog.wording.Message;
import java.math.BigDecimal;
import java.util.Collections;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Yields the facts of a log. */
public final class Reckoner {

  private final Log log;
  private final Problems problems = new Problems();
  private final Ledger ledger;
  private final NumberStyle style;
  private final ColumnNames columns;

  private Reckoner(Log log, KeptResults results) {
    this.columns = new ColumnNames(log);
    this.log = log;
    this.ledger = new Ledger(problems, results);
    this.style = new NumberStyle(log.head().locale(), log.head().inchDenominator());
  }

  /** All facts that can be reckoned, with a problem for each that cannot. */
  public static Reckoning reckon(Log log) {
    return reckon(log, KeptResults.none());
  }

  /**
   * The same.
   *
   * @param results of the trade's reckonings as they were the last time
   */
  public static Reckoning reckon(Log log, KeptResults results) {
    return new Reckoner(log, results).reckon();
  }

  public record Reckoning(Facts facts, List<Problem> problems) {}

  private Reckoning reckon() {
    head(log.head());
    List<Facts.DayHours> days = new HoursBook(log, ledger).reckon();
    StockBook.Outcome stock = new StockBook(log, ledger).reckon();
    List<Facts.MassPoint> growth = new MassBook(log, ledger).reckon();
    labour();
    new PlanBook(log, ledger).reckon();
    new GrowthForecast(log, ledger).reckon(growth);
    FactGraph graph = new FactGraph(ledger);
    Map<String, MeasuredNode> measured = measured(graph);
    log.statements().forEach(s -> ledger.promise(s.name()));
    log.requests().forEach(r -> ledger.promise(r.prefix() + "."));
    log.statements().forEach(s -> state(s, graph, measured));
    log.requests().forEach(r -> request(r, graph));
    graph.reckonAll();
    List<Facts.LimitCheck> limits = new LimitBook(ledger, style).check(log.limits());
    new LinkCheck(log, ledger, style).check();
    new UnreadColumns(log, columns, problems).remind();
    new CutFromCheck(log, ledger).check();
    remindOfTolerances();
    refuseOtherMoney();
    Facts facts =
        new Facts(
            Collections.unmodifiableSortedMap(ledger.facts()),
            limits,
            stock.uses(),
            stock.materials(),
            days,
            growth,
            drawings());
    return new Reckoning(facts, problems.list());
  }

  private List<Facts.Drawing> drawings() {
    List<String> order = log.requests().stream().map(Request::prefix).toList();
    return ledger.drawings().stream()
        .sorted(Comparator.comparingInt(d -> order.indexOf(d.request())))
        .toList();
  }

  private void head(Head head) {
    Marked<BigDecimal> scale = head.scale();
    if (scale != null) {
      Quantity denominator = Quantity.of(1, Unit.ONE).times(scale.value());
      stated(FactId.SCALE, Message.of("scale"), denominator, scale.label(), scale.place());
    }
    Marked<Quantity> rate = head.rate();
    if (rate != null) {
      stated(FactId.RATE, Message.of("rate"), rate.value(), rate.label(), rate.place());
      if (!isPerTime(rate.value().unit(), head.currency())) {
        problems.error(
            rate.place(),
            Sentence.of("The rate {0} is not {1} for a time.", rate.value(), head.currency()),
            Sentence.of("Write such as 34 {0}/h.", head.currency()));
      }
    }
    // What is planned to be used is for the shopping list alone.
    head.budgets()
        .forEach(
            (name, budget) -> {
              if (!ShoppingList.isPlannedUse(name)) {
                stated(
                    new FactId.Budget(name),
                    Message.of("budget", name),
                    budget.value(),
                    budget.label(),
                    budget.place());
              }
            });
  }

  private static boolean isPerTime(Unit unit, String currency) {
    try {
      return unit.isCompatible(Unit.parse(currency + "/h"));
    } catch (QuantityException e) {
      return false;
    }
  }

  private void stated(FactId id, Message title, Quantity value, Label label, Place place) {
    ledger.given(id, title, value, Origin.STATED, null, label, place, null);
  }

  /** What the hours cost, where a rate is known. */
  private void labour() {
    if (ledger.has(FactId.RATE) && ledger.has(FactId.HOURS)) {
      String hours = FactId.HOURS.name();
      String rate = FactId.RATE.name();
      Expression tree =
          new Expression.Binary('*', new Expression.Name(hours), new Expression.Name(rate));
      ledger.reckoned(
          FactId.LABOUR,
          Message.of("labour.total"),
          tree,
          Label.NONE,
          ledger.require(rate).place());
    }
  }

  private Map<String, MeasuredNode> measured(FactGraph graph) {
    Map<String, MeasuredNode> nodes = new TreeMap<>();
    for (Entry entry : log.entries()) {
      for (Entry.Measurement m : entry.measured()) {
        if (isNameFree(m.fact(), m.place())) {
          nodes.computeIfAbsent(m.fact(), MeasuredNode::new).add(entry, m);
        }
      }
    }
    nodes.values().forEach(graph::add);
    return nodes;
  }

  private void state(Statement statement, FactGraph graph, Map<String, MeasuredNode> measured) {
    if (!isNameFree(statement.name(), statement.place())) {
      return;
    }
    MeasuredNode node = measured.get(statement.name());
    FactId own = new FactId.Named(statement.name());
    FactId id = node == null ? own : new FactId.Planned(own);
    try {
      ColumnNames.Filled filled = columns.fill(Formula.parse(statement.expression()));
      Label label = label(statement).join(filled.label());
      if (!graph.add(new FormulaNode(id, statement, filled.formula(), label))) {
        problems.error(
            statement.place(),
            Sentence.of("\"{0}\" is stated twice.", id.name()),
            "Keep one of the two, or give one another name.");
      } else if (node != null) {
        node.plannedAs(id.name(), Ledger.title(statement.title(), statement.name()));
      }
    } catch (QuantityException e) {
      problems.error(
          FormulaNode.at(statement.expressionPlace(), e.index()),
          Sentence.of("\"{0}\": {1}", statement.name(), e.what()),
          e.remedy());
    }
  }

  /** What was taken from a sheet is under the sheet's agreements. */
  private Label label(Statement statement) {
    String source = statement.source();
    if (source == null) {
      return statement.label();
    }
    String path = source.replaceFirst("#.*", "");
    for (Sheet sheet : log.sheets()) {
      if (sheet.path().equals(path)) {
        return statement.label().join(sheet.label(source));
      }
    }
    if (path.startsWith("sheets/")) {
      problems.error(
          statement.place(),
          Sentence.of(
              "\"{0}\" was taken from \"{1}\", which is not there.", statement.name(), path),
          Suggestion.findNearest(path, log.sheets().stream().map(Sheet::path).toList())
              .<CharSequence>map(Suggestion::of)
              .orElse(
                  "Put the drawing there under that name, as a PDF or a picture; or take \"from\""
                      + " away and say in the title what it was taken from."));
    }
    return statement.label();
  }

  private boolean isNameFree(String name, Place place) {
    if (FactId.isKept(name) || ledger.find(name).isPresent()) {
      problems.error(
          place,
          Sentence.of("The name \"{0}\" is kept for what is counted from the log.", name),
          "Give this fact another name.");
      return false;
    }
    return true;
  }

  private void request(Request request, FactGraph graph) {
    RequestNode.of(request, log, columns, ledger).ifPresent(graph::addPrefix);
  }

  private void remindOfTolerances() {
    for (Fact fact : ledger.facts().values()) {
      BigDecimal t = fact.value().tolerance();
      boolean written = fact.origin() != Origin.RECKONED;
      if (written && t != null && t.compareTo(fact.value().value().abs()) > 0) {
        problems.reminder(
            fact.place(),
            Sentence.of(
                "The tolerance of \"{0}\" ({1}) is larger than its value.",
                fact.name(), style.show(fact.value())),
            "Check both figures and their units.");
      }
    }
  }

  /** Codes of currencies are words, too: 24 AWG is wire to whoever wrote it. */
  private void refuseOtherMoney() {
    String own = log.head().currency();
    Marked<Quantity> rate = log.head().rate();
    for (Fact fact : ledger.facts().values()) {
      String code = fact.value().unit().currency();
      if (fact.origin() == Origin.RECKONED
          || code == null
          || code.equals(own)
          || rate != null && rate.place().equals(fact.place())) {
        continue;
      }
      String money = Currency.getInstance(code).getDisplayName(Locale.ENGLISH);
      problems.error(
          fact.place(),
          Sentence.of("\"{0}\": {1} means money, {2}.", fact.name(), code, money),
          code.equals("AWG")
              ? Sentence.of("Write wire as awg(24); money is written in {0} here.", own)
              : Sentence.of(
                  "Write money in {0}, as currency in log.yaml says, and a count without a unit.",
                  own));
    }
  }
}
