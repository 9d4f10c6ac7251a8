package chinelog.reckon.trade;

import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.wording.Phrase;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Something a reckoning takes, such as {@code draught}: a length.
 *
 * @param name as written in facts.yaml
 * @param title in words, with what it does
 * @param unit of a quantity: any unit of the same kind will do; {@link Unit#ONE} for the others
 * @param choices the words or table columns to be given; a column ending in {@code …} stands for
 *     every column whose name begins so, one ending in {@code ?} may be left out
 * @param required whether there is no doing without
 * @param fallback what is taken where nothing is written: a figure, one of the choices, or what
 *     else is done, in words; empty if there is nothing
 * @param recalled whether the log is reminded when a figure rests on the fallback
 * @param headings of a table's columns that say the same, so that there is nothing to recall
 * @param more further columns that a table may have, as a pattern for their names in small letters
 */
public record Parameter(
    String name,
    String title,
    Kind kind,
    Unit unit,
    List<String> choices,
    boolean required,
    String fallback,
    boolean recalled,
    List<String> headings,
    String more) {

  public Parameter {
    choices = List.copyOf(choices);
    headings = List.copyOf(headings);
  }

  /** How an input is to be understood. */
  public enum Kind {
    /** An expression over facts. */
    QUANTITY,
    /** The name of a table. */
    TABLE,
    /** One of the words in {@link #choices()}; any word where there are none. */
    WORD,
    /** The name of a table, or names whose facts are what the table's columns would be. */
    SOLIDS
  }

  static Parameter quantity(String name, String title, Unit unit) {
    return new Parameter(
        name, title, Kind.QUANTITY, unit, List.of(), true, "", false, List.of(), "");
  }

  static Parameter table(String name, String title, String... columns) {
    return new Parameter(
        name, title, Kind.TABLE, Unit.ONE, List.of(columns), true, "", false, List.of(), "");
  }

  static Parameter solids(String name, String title, String... columns) {
    return new Parameter(
        name, title, Kind.SOLIDS, Unit.ONE, List.of(columns), true, "", false, List.of(), "");
  }

  /** The names in a list such as {@code fin, bulb}. */
  public static List<String> names(String list) {
    return Arrays.stream(list.strip().split("[,\\s]+")).filter(n -> !n.isEmpty()).toList();
  }

  /** What the facts of a solid's are called, such as {@code volume} of {@code fin.volume}. */
  public List<String> attributes() {
    return choices.stream().filter(c -> !c.endsWith("?")).toList();
  }

  static Parameter word(String name, String title, String... words) {
    return new Parameter(
        name, title, Kind.WORD, Unit.ONE, List.of(words), true, "", false, List.of(), "");
  }

  /** This, but it may be left out; {@code fallback} says what is taken then. */
  Parameter or(String fallback) {
    return new Parameter(name, title, kind, unit, choices, false, fallback, false, headings, more);
  }

  /** This, with a reminder where a figure rests on what is taken for want of it. */
  Parameter recalling() {
    return new Parameter(
        name, title, kind, unit, choices, required, fallback, true, headings, more);
  }

  /** This, which the heading of a column may say as well. */
  Parameter orHeading(String... columns) {
    return new Parameter(
        name, title, kind, unit, choices, required, fallback, recalled, List.of(columns), more);
  }

  /** This table, which may have columns besides whose names are of this pattern. */
  Parameter withColumns(String pattern) {
    return new Parameter(
        name, title, kind, unit, choices, required, fallback, recalled, headings, pattern);
  }

  /** Whether a table's column of this name is read. */
  public boolean reads(String column) {
    String wanted = column.strip().toLowerCase(Locale.ROOT);
    return !more.isEmpty() && wanted.matches(more)
        || choices.stream()
            .map(c -> c.toLowerCase(Locale.ROOT).replaceFirst("\\?$", ""))
            .anyMatch(c -> c.equals(wanted));
  }

  /** The figure or word that is taken where nothing is written; empty where it is neither. */
  public Optional<Phrase> findTaken() {
    if (kind == Kind.WORD) {
      return choices.contains(fallback) ? Optional.of(Phrase.own(fallback)) : Optional.empty();
    }
    try {
      return kind == Kind.QUANTITY && !fallback.isEmpty()
          ? Optional.of(new Phrase.Amount(Quantity.parse(fallback.replaceFirst(",.*", ""))))
          : Optional.empty();
    } catch (QuantityException e) {
      return Optional.empty();
    }
  }

  /** What is taken where it is left out: in words, or as it would be typed. */
  public Sentence otherwise() {
    return fallback.contains(" ") ? Sentence.of(fallback) : Sentence.of("{0}", fallback);
  }

  /** As a line of help, such as {@code draught: height of the waterline … [mm]}. */
  public String line() {
    StringBuilder line = new StringBuilder(name).append(": ");
    switch (kind) {
      case QUANTITY -> {
        line.append(title);
        if (!unit.equals(Unit.ONE)) {
          line.append(" [").append(unit.symbol()).append(']');
        }
      }
      case TABLE ->
          line.append("the name of a table, ")
              .append(title)
              .append(", with the columns ")
              .append(String.join(", ", choices));
      case SOLIDS ->
          line.append(title)
              .append(", by their names, such as \"fin bulb\", each with the facts .")
              .append(String.join(", .", attributes()))
              .append("; or the name of a table with the columns ")
              .append(String.join(", ", choices));
      case WORD -> {
        line.append(title);
        if (!choices.isEmpty()) {
          line.append(", one of ").append(String.join(", ", choices));
        }
      }
    }
    if (!required) {
      line.append(fallback.isEmpty() ? "; may be left out" : "; if left out, " + fallback);
    }
    return line.toString();
  }
}
