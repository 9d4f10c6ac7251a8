package chinelog.reckon.trade;

import chinelog.quantity.Unit;
import java.util.List;

/**
 * Something a reckoning takes, such as {@code draught}: a length.
 *
 * @param name as written in facts.yaml
 * @param title in words, with what it does
 * @param unit of a quantity: any unit of the same kind will do; {@link Unit#ONE} for the others
 * @param choices the words or table columns to be given; a column ending in {@code …} stands for
 *     every column whose name begins so, one ending in {@code ?} may be left out
 * @param required whether there is no doing without
 * @param fallback what is taken where nothing is written, in words; empty if there is nothing
 */
public record Parameter(
    String name,
    String title,
    Kind kind,
    Unit unit,
    List<String> choices,
    boolean required,
    String fallback) {

  public Parameter {
    choices = List.copyOf(choices);
  }

  /** How an input is to be understood. */
  public enum Kind {
    /** An expression over facts. */
    QUANTITY,
    /** The name of a table. */
    TABLE,
    /** One of the words in {@link #choices()}; any word where there are none. */
    WORD
  }

  static Parameter quantity(String name, String title, Unit unit) {
    return new Parameter(name, title, Kind.QUANTITY, unit, List.of(), true, "");
  }

  static Parameter table(String name, String title, String... columns) {
    return new Parameter(name, title, Kind.TABLE, Unit.ONE, List.of(columns), true, "");
  }

  static Parameter word(String name, String title, String... words) {
    return new Parameter(name, title, Kind.WORD, Unit.ONE, List.of(words), true, "");
  }

  /** This, but it may be left out; {@code fallback} says what is taken then. */
  Parameter or(String fallback) {
    return new Parameter(name, title, kind, unit, choices, false, fallback);
  }
}
