package chinelog.reckon;

import chinelog.label.Label;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import chinelog.reckon.formula.Expression;
import chinelog.wording.Message;
import chinelog.wording.Phrase;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A named quantity with its origin.
 *
 * @param name that of its id, such as {@code hull.loa}
 * @param value unrounded
 * @param date of the youngest of what it rests on; null where nothing was dated
 * @param label of this fact: its own joined with all its inputs'
 * @param formula how it was reckoned; null for a fact that was not
 * @param method how it was reckoned and where the formula comes from, a sentence each; empty for
 *     plain arithmetic
 * @param inputs names of the facts it rests on directly, in the formula's order
 * @param basis what of them, and what besides, decides its value
 * @param entry id of the entry it comes from; null for others
 */
public record Fact(
    FactId id,
    String name,
    Phrase title,
    Quantity value,
    Origin origin,
    @Nullable LocalDate date,
    Label label,
    Place place,
    @Nullable Expression formula,
    List<Message> method,
    List<String> inputs,
    Basis basis,
    @Nullable String entry) {

  Fact withTitle(Phrase newTitle) {
    return new Fact(
        id, name, newTitle, value, origin, date, label, place, formula, method, inputs, basis,
        entry);
  }

  Fact withValue(Quantity newValue) {
    return new Fact(
        id, name, title, newValue, origin, date, label, place, formula, method, inputs, basis,
        entry);
  }
}
