package chinelog.reckon;

import chinelog.label.Label;
import chinelog.log.records.Statement;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.reckon.formula.Evaluator;
import chinelog.reckon.formula.Expression;
import chinelog.reckon.formula.Formula;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.util.List;

/**
 * A fact that facts.yaml states, as a quantity or as a formula.
 *
 * @param id usually of the statement's own name
 * @param label the statement's, joined with that of the sheet it was taken from
 */
record FormulaNode(FactId id, Statement statement, Formula formula, Label label) implements Node {

  @Override
  public String name() {
    return id.name();
  }

  @Override
  public List<String> needs() {
    return formula.names();
  }

  @Override
  public boolean yield(Ledger ledger) {
    try {
      Quantity reckoned = Evaluator.evaluate(formula.tree(), n -> ledger.require(n).value());
      Quantity value = ledger.roots().correlated(formula.tree(), reckoned);
      boolean stated = formula.tree() instanceof Expression.Literal;
      List<String> inputs = formula.names();
      Phrase title = Ledger.title(statement.title(), statement.name());
      ledger.put(
          new Fact(
              id,
              name(),
              id instanceof FactId.Planned ? Message.of("as.planned", title) : title,
              value,
              stated ? Origin.STATED : Origin.RECKONED,
              ledger.youngest(statement.date(), inputs),
              ledger.join(label, inputs),
              statement.place(),
              stated ? null : formula.tree(),
              List.of(),
              inputs,
              Basis.of(inputs),
              null));
      return true;
    } catch (Evaluator.Fault fault) {
      QuantityException reason = fault.reason();
      ledger.error(
          at(formula.indexOf(fault.part())),
          Sentence.of("\"{0}\": {1}", name(), reason.what()),
          reason.remedy());
      return false;
    }
  }

  @Override
  public void unknown(Ledger ledger, String need, FactGraph graph) {
    int index =
        Formula.nameParts(formula.tree()).stream()
            .filter(n -> n.name().equals(need))
            .mapToInt(formula::indexOf)
            .findFirst()
            .orElse(0);
    ledger.error(
        at(index),
        Sentence.of("\"{0}\" needs \"{1}\", but there is no such fact.", name(), need),
        Ledger.remedyFor(need, graph.names()));
  }

  @Override
  public Place place() {
    return statement.place();
  }

  @Override
  public void circular(Ledger ledger, List<String> circle) {
    ledger.error(
        statement.place(),
        circle.size() == 2
            ? Sentence.of("\"{0}\" is reckoned from itself.", name())
            : Sentence.of("\"{0}\" rests on itself: {1}.", name(), String.join(" → ", circle)),
        "State or measure one of them instead of reckoning it.");
  }

  private Place at(int index) {
    return at(statement.expressionPlace(), index);
  }

  static Place at(Place start, int index) {
    return start.column() == 0
        ? start
        : Place.of(start.file(), start.line(), start.column() + index);
  }
}
