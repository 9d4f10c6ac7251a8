package chinelog.reckon;

import chinelog.json.Json;
import chinelog.log.records.Log;
import chinelog.quantity.NumberStyle;
import chinelog.quantity.Quantity;
import chinelog.reckon.formula.Expression;
import chinelog.reckon.formula.FormulaWriter;
import chinelog.wording.Catalogue;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;

/**
 * Writes facts for other programs and for people, in the order given.
 *
 * <p>The columns of CSV (RFC 4180 with a heading, lines ending in LF) and the keys of JSON (an
 * array of objects) are the same and will stay so:
 *
 * <ul>
 *   <li>{@code name}, such as {@code hull.loa}, and {@code title}
 *   <li>{@code value}, a decimal number of at most 15 significant digits, in {@code unit}, and
 *       {@code tolerance} in the same unit, empty or null where there is none
 *   <li>{@code origin}: {@code stated}, {@code measured}, {@code weighed}, {@code counted}, {@code
 *       reckoned}
 *   <li>{@code date} as ISO 8601 has it, empty or null where there is none
 *   <li>{@code under}: agreements, joined by a space in CSV, an array in JSON
 *   <li>{@code place}: file, line and column
 *   <li>{@code formula}, empty or null where there is none, and {@code inputs}: names, joined by a
 *       space in CSV, an array in JSON
 *   <li>{@code entry}: the id of the entry it comes from, empty or null where there is none
 * </ul>
 */
public final class FactWriter {

  private static final MathContext DIGITS = new MathContext(15, RoundingMode.HALF_UP);

  /** Formulas are written in plain figures, whatever the log's language. */
  private static final NumberStyle PLAIN = new NumberStyle(Locale.ROOT, 0);

  private static final String[] COLUMNS = {
    "name",
    "title",
    "value",
    "unit",
    "tolerance",
    "origin",
    "date",
    "under",
    "place",
    "formula",
    "inputs",
    "entry"
  };

  private FactWriter() {}

  /** A table for the eye: name, value and title in columns. */
  public static String table(Collection<Fact> facts, Log log) {
    NumberStyle style = new NumberStyle(log.head().locale(), log.head().inchDenominator());
    Catalogue words = words(log);
    List<String[]> rows = new ArrayList<>();
    for (Fact fact : facts) {
      rows.add(
          new String[] {
            fact.name(), style.show(fact.value()).replace('\u202f', ' '), words.text(fact.title())
          });
    }
    int first = rows.stream().mapToInt(r -> width(r[0])).max().orElse(0);
    int second = rows.stream().mapToInt(r -> width(r[1])).max().orElse(0);
    StringBuilder text = new StringBuilder();
    for (String[] row : rows) {
      text.append(row[0]).append(" ".repeat(first - width(row[0]) + 2));
      text.append(" ".repeat(second - width(row[1]))).append(row[1]);
      text.append("  ").append(row[2]).append('\n');
    }
    return text.toString();
  }

  /** How many columns of a terminal a text takes: accents take none, ideographs two. */
  static int width(String text) {
    return text.codePoints()
        .map(
            c ->
                Character.getType(c) == Character.NON_SPACING_MARK
                    ? 0
                    : Character.isIdeographic(c) ? 2 : 1)
        .sum();
  }

  public static String csv(Collection<Fact> facts, Log log) {
    Catalogue words = words(log);
    StringBuilder text = new StringBuilder();
    CSVFormat format =
        CSVFormat.RFC4180.builder().setHeader(COLUMNS).setRecordSeparator('\n').get();
    try (CSVPrinter printer = new CSVPrinter(text, format)) {
      for (Fact fact : facts) {
        printer.printRecord(
            fact.name(),
            words.text(fact.title()),
            plain(fact.value().value()),
            fact.value().unit().symbol(),
            tolerance(fact.value()),
            word(fact.origin()),
            fact.date(),
            String.join(" ", fact.label().agreements()),
            fact.place(),
            formula(fact),
            String.join(" ", fact.inputs()),
            fact.entry());
      }
    } catch (IOException e) {
      throw new IllegalStateException("memory cannot fail to be written", e);
    }
    return text.toString();
  }

  public static String json(Collection<Fact> facts, Log log) {
    Catalogue words = words(log);
    return Json.lines(facts.stream().map(f -> json(f, words)).toList()) + "\n";
  }

  private static Map<String, Object> json(Fact fact, Catalogue words) {
    Map<String, Object> is = new LinkedHashMap<>();
    is.put("name", fact.name());
    is.put("title", words.text(fact.title()));
    is.put("value", rounded(fact.value().value()));
    is.put("unit", fact.value().unit().symbol());
    BigDecimal tolerance = fact.value().tolerance();
    is.put("tolerance", tolerance == null ? null : rounded(tolerance));
    is.put("origin", word(fact.origin()));
    is.put("date", fact.date());
    is.put("under", fact.label().agreements());
    is.put("place", fact.place());
    is.put("formula", formula(fact));
    is.put("inputs", fact.inputs());
    is.put("entry", fact.entry());
    return is;
  }

  private static @Nullable String formula(Fact fact) {
    Expression formula = fact.formula();
    return formula == null
        ? null
        : FormulaWriter.write(formula, n -> n, PLAIN)
            .replace('\u202f', ' ')
            .replace('−', '-')
            .replace('×', '*')
            .replace('÷', '/')
            .replace("π", "pi");
  }

  private static Catalogue words(Log log) {
    return Catalogue.of(Facts.MESSAGES, log.head().locale());
  }

  private static String word(Origin origin) {
    return origin.name().toLowerCase(Locale.ROOT);
  }

  private static @Nullable String tolerance(Quantity value) {
    BigDecimal t = value.tolerance();
    return t == null ? null : plain(t);
  }

  static String plain(BigDecimal number) {
    return rounded(number).toPlainString();
  }

  static BigDecimal rounded(BigDecimal number) {
    BigDecimal rounded = number.round(DIGITS);
    return rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros();
  }
}
