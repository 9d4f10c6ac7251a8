package chinelog.reckon;

import chinelog.label.Label;
import chinelog.log.records.Log;
import chinelog.log.records.Marked;
import chinelog.log.records.Request;
import chinelog.log.records.Table;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.reckon.formula.Evaluator;
import chinelog.reckon.formula.Expression;
import chinelog.reckon.formula.Formula;
import chinelog.reckon.trade.Inputs;
import chinelog.reckon.trade.Parameter;
import chinelog.reckon.trade.Part;
import chinelog.reckon.trade.Sketch;
import chinelog.reckon.trade.TradeException;
import chinelog.reckon.trade.TradeReckoning;
import chinelog.reckon.trade.TradeReckonings;
import chinelog.reckon.trade.Yield;
import chinelog.wording.Message;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/** A trade reckoning that facts.yaml asks for. */
record RequestNode(
    Request request,
    Label own,
    TradeReckoning reckoning,
    SortedMap<String, Formula> formulas,
    SortedMap<String, Table> tables,
    SortedMap<String, String> words)
    implements Node {

  /** The node of a request, unless one of its inputs cannot be understood, which is then said. */
  static Optional<RequestNode> of(Request request, Log log, ColumnNames columns, Ledger ledger) {
    String wanted = request.reckoning().value();
    TradeReckoning reckoning = TradeReckonings.find(wanted).orElse(null);
    if (reckoning == null) {
      ledger.error(
          request.reckoning().place(),
          Sentence.of("There is no reckoning \"{0}\".", wanted),
          wanted.equals("timber")
              ? "Write material, with name in place of species."
              : Suggestion.remedy(wanted, TradeReckonings.names()));
      return Optional.empty();
    }
    SortedMap<String, Formula> formulas = new TreeMap<>();
    SortedMap<String, Table> tables = new TreeMap<>();
    SortedMap<String, String> words = new TreeMap<>();
    Label label = request.label();
    boolean understood = true;
    for (Map.Entry<String, Marked<String>> input : request.inputs().entrySet()) {
      String text = input.getValue().value().strip();
      Place place = input.getValue().place();
      // An input that the reckoning does not know goes to it as a word, for it to refuse.
      Parameter.Kind kind =
          reckoning.findParameter(input.getKey()).map(Parameter::kind).orElse(Parameter.Kind.WORD);
      try {
        switch (kind) {
          case QUANTITY -> {
            ColumnNames.Filled filled = columns.fill(Formula.parse(text));
            formulas.put(input.getKey(), filled.formula());
            label = label.join(filled.label());
          }
          case TABLE -> tables.put(input.getKey(), table(log, text, reckoning, input.getKey()));
          case SOLIDS -> {
            if (log.tables().stream().anyMatch(t -> t.name().equals(text))) {
              tables.put(input.getKey(), table(log, text, reckoning, input.getKey()));
            } else {
              words.put(input.getKey(), text);
              formulas.putAll(solids(input.getKey(), text, reckoning));
            }
          }
          case WORD -> words.put(input.getKey(), text);
        }
      } catch (QuantityException e) {
        ledger.error(FormulaNode.at(place, e.index()), e.what(), e.remedy());
        understood = false;
      }
    }
    return understood
        ? Optional.of(new RequestNode(request, label, reckoning, formulas, tables, words))
        : Optional.empty();
  }

  private static Table table(Log log, String name, TradeReckoning reckoning, String input)
      throws QuantityException {
    List<String> known = log.tables().stream().map(Table::name).toList();
    return log.tables().stream()
        .filter(t -> t.name().equals(name))
        .findFirst()
        .orElseThrow(
            () ->
                new QuantityException(
                    Sentence.of("There is no table \"{0}\" in tables.", name),
                    Suggestion.findNearest(name, known)
                        .<CharSequence>map(Suggestion::of)
                        .orElseGet(
                            () ->
                                Sentence.of(
                                    "Add tables/{0}.csv with the columns {1}; \"reckon --list {2}\" shows one.",
                                    name, columns(reckoning, input), reckoning.name())),
                    0));
  }

  /** The facts of solids told by their names, such as {@code appendages.fin.volume}. */
  private static SortedMap<String, Formula> solids(
      String input, String names, TradeReckoning reckoning) throws QuantityException {
    SortedMap<String, Formula> all = new TreeMap<>();
    for (String name : Parameter.names(names)) {
      for (String attribute : reckoning.findParameter(input).orElseThrow().attributes()) {
        String fact = name + "." + attribute;
        all.put(input + "." + fact, Formula.parse(fact));
      }
    }
    return all;
  }

  private static String columns(TradeReckoning reckoning, String input) {
    return reckoning.findParameter(input).map(p -> String.join(", ", p.choices())).orElse("");
  }

  @Override
  public String name() {
    return request.prefix();
  }

  @Override
  public List<String> needs() {
    LinkedHashSet<String> needs = new LinkedHashSet<>();
    formulas.values().forEach(f -> needs.addAll(f.names()));
    return List.copyOf(needs);
  }

  @Override
  public boolean yield(Ledger ledger) {
    SortedMap<String, Quantity> quantities = new TreeMap<>();
    for (Map.Entry<String, Formula> input : formulas.entrySet()) {
      try {
        quantities.put(
            input.getKey(),
            Evaluator.evaluate(input.getValue().tree(), n -> ledger.require(n).value()));
      } catch (Evaluator.Fault fault) {
        ledger.error(
            FormulaNode.at(place(input.getKey()), input.getValue().indexOf(fault.part())),
            Sentence.of("\"{0}\": {1}", input.getKey(), fault.reason().what()),
            fault.reason().remedy());
        return false;
      }
    }
    try {
      Inputs inputs = new Inputs(quantities, tables, words);
      String digest = ledger.results().recall(reckoning, inputs);
      List<Yield> yields = reckoning.reckon(inputs);
      List<Part> parts = reckoning.draw(inputs);
      Label label = ledger.join(label(), needs());
      yields.forEach(y -> enter(y, label, ledger));
      List<Sketch> sketches = reckoning.sketch(inputs);
      ledger.results().keep(digest, yields, parts, sketches);
      if (!parts.isEmpty() || !sketches.isEmpty()) {
        ledger
            .drawings()
            .add(
                new Facts.Drawing(
                    request.prefix(), parts, sketches, needs(), named(), label, request.place()));
      }
      remind(yields, ledger);
      return true;
    } catch (TradeException e) {
      Place table = e.place();
      ledger.error(table == null ? place(e.input()) : table, e.what(), e.remedy());
      return false;
    }
  }

  private SortedMap<String, String> named() {
    SortedMap<String, String> named = new TreeMap<>();
    formulas.forEach(
        (input, formula) -> {
          if (formula.tree() instanceof Expression.Name name) {
            named.put(input, name.name());
          }
        });
    return named;
  }

  private void enter(Yield yield, Label label, Ledger ledger) {
    FactId id = new FactId.Yielded(request.prefix(), reckoning.name(), yield.name());
    String name = id.name();
    Fact before = ledger.find(name).orElse(null);
    if (before != null) {
      ledger.reminder(
          before.place(),
          Sentence.of(
              "\"{0}\" is given here, so that the one of \"{1}\" ({2}) is left out.",
              name, reckoning.name(), request.place()),
          "Give one of the two another name if you need both.");
      return;
    }
    ledger.put(
        new Fact(
            id,
            name,
            yield.title(),
            yield.value(),
            Origin.RECKONED,
            ledger.youngest(null, needs()),
            label,
            request.place(),
            null,
            yield.method(),
            needs(),
            basis(yield, ledger),
            null));
  }

  /** Of all that was given or taken, what decides a figure. */
  private Basis basis(Yield yield, Ledger ledger) {
    LinkedHashSet<String> facts = new LinkedHashSet<>();
    List<Message> given = new ArrayList<>();
    for (Parameter parameter : reckoning.parameters()) {
      String input = parameter.name();
      boolean written = request.inputs().containsKey(input);
      if (yield.basis().isEmpty() ? !written : !yield.basis().contains(input)) {
        continue;
      }
      Formula formula = formulas.get(input);
      Table table = tables.get(input);
      // Readers who write no files are told of "mix resin", not of "mix_resin".
      String told = input.replace('_', ' ');
      if (table != null) {
        given.add(Message.of("given.table", told, table.name(), table.rows().size()));
      } else if (formula != null) {
        facts.addAll(formula.names());
        if (!(formula.tree() instanceof Expression.Name)) {
          Quantity value = Evaluator.evaluate(formula.tree(), n -> ledger.require(n).value());
          given.add(Message.of("given.figure", told, value));
        }
      } else if (words.containsKey(input)) {
        formulas.tailMap(input + ".").forEach((name, of) -> solid(input, name, of, facts));
        given.add(Message.of("given.word", told, words.getOrDefault(input, "")));
      } else if (tables.values().stream().noneMatch(t -> says(t, parameter))) {
        parameter.findTaken().ifPresent(t -> given.add(Message.of("given.taken", told, t)));
      }
    }
    return new Basis(List.copyOf(facts), given);
  }

  private static void solid(String input, String name, Formula formula, Set<String> facts) {
    if (name.startsWith(input + ".")) {
      facts.addAll(formula.names());
    }
  }

  /** Where a figure of weight rests on what is taken for want of a word. */
  private void remind(List<Yield> yields, Ledger ledger) {
    for (Parameter parameter : reckoning.parameters()) {
      String input = parameter.name();
      if (!parameter.recalled() || request.inputs().containsKey(input)) {
        continue;
      }
      if (!parameter.headings().isEmpty()) {
        tables.forEach((name, table) -> remindOfHeading(name, table, parameter, ledger));
      } else if (yields.stream().anyMatch(y -> y.basis().contains(input))) {
        ledger.reminder(
            request.place(),
            Sentence.of("\"{0}\" takes {1} for \"{2}\".", name(), parameter.otherwise(), input),
            Sentence.of("Write {0}: {1}.", input, Sentence.of(parameter.title())));
      }
    }
    for (Yield yield : yields) {
      Yield.Caution caution = yield.caution();
      if (caution != null) {
        ledger.reminder(
            request.place(),
            Sentence.of("\"{0}.{1}\": {2}", name(), yield.name(), Sentence.of(caution.what())),
            caution.remedy());
      }
    }
  }

  /** Where a column might have been measured otherwise than is taken. */
  private void remindOfHeading(String name, Table table, Parameter parameter, Ledger ledger) {
    String heading = parameter.headings().get(0);
    String column = heading.replaceFirst(" .*", "");
    boolean may = reckoning.findParameter(name).filter(p -> p.reads(heading)).isPresent();
    table.columns().stream()
        .filter(c -> may)
        .filter(c -> c.name().strip().equalsIgnoreCase(column))
        .findFirst()
        .ifPresent(
            c ->
                ledger.reminder(
                    c.place(),
                    Sentence.of(
                        "The heading does not say from which end \"{0}\" is measured; {1} is taken.",
                        column, parameter.otherwise()),
                    Sentence.of(
                        "Write \"{0}\" as the heading, or {1} with the reckoning.",
                        String.join("\" or \"", parameter.headings()), parameter.name())));
  }

  /** Whether the heading of a column says what is not written with the reckoning. */
  private static boolean says(Table table, Parameter parameter) {
    return table.columns().stream()
        .anyMatch(c -> parameter.headings().contains(c.name().strip().toLowerCase(Locale.ROOT)));
  }

  /** Of all that goes in, the facts excepted. */
  private Label label() {
    Label label = own.join(request.reckoning().label());
    for (Marked<String> input : request.inputs().values()) {
      label = label.join(input.label());
    }
    for (Table table : tables.values()) {
      label = label.join(table.label());
      for (Table.Column column : table.columns()) {
        label = label.join(column.label());
      }
      for (Table.Row row : table.rows()) {
        label = label.join(row.label());
      }
    }
    return label;
  }

  private Place place(String input) {
    Marked<String> written = request.inputs().get(input.replaceFirst("\\..*", ""));
    return written == null ? request.place() : written.place();
  }

  @Override
  public void unknown(Ledger ledger, String need, FactGraph graph) {
    for (Map.Entry<String, Formula> input : formulas.entrySet()) {
      for (Expression.Name part : Formula.nameParts(input.getValue().tree())) {
        if (part.name().equals(need)) {
          ledger.error(
              FormulaNode.at(place(input.getKey()), input.getValue().indexOf(part)),
              Sentence.of(
                  "\"{0}\" needs \"{1}\", but there is no such fact.", reckoning.name(), need),
              Ledger.remedyFor(need, graph.names()));
          return;
        }
      }
    }
  }

  @Override
  public Place place() {
    return request.place();
  }

  @Override
  public void circular(Ledger ledger, List<String> circle) {
    ledger.error(
        request.place(),
        Sentence.of(
            "\"{0}\" ({1}) rests on itself: {2}.",
            name(), reckoning.name(), String.join(" → ", circle)),
        Sentence.of(
            "State or measure what it needs; a name that begins with \"{0}.\" and is"
                + " stated nowhere is looked for among its own figures.",
            name()));
  }
}
