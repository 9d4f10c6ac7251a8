package chinelog.reckon;

import chinelog.json.Json;
import chinelog.log.records.Log;
import chinelog.quantity.NumberStyle;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.reckon.trade.Quotation;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * Writes a quotation: as a page of text for people, as CSV and JSON for other programs.
 *
 * <p>CSV (RFC 4180 with a heading, lines ending in LF) has the columns {@code item}, {@code title},
 * {@code hours}, {@code spread}, {@code labour}, {@code material}, {@code amount}, {@code
 * currency}, {@code basis}: one line with the item {@code stage} for each stage, then one each for
 * {@code labour}, {@code material}, {@code overhead}, {@code margin}, {@code net}, {@code tax},
 * {@code total}, {@code low} and {@code high}, with its amount. JSON is one object of the same
 * words, with {@code stages} and {@code sums}, and with {@code restsOn}, {@code notes} and {@code
 * under}. Hours and money are decimal numbers; hours have at most 15 significant digits.
 */
public final class QuotationWriter {

  private static final int WIDTH = 78;
  private static final char NARROW_SPACE = '\u202f';

  private static final String[] COLUMNS = {
    "item", "title", "hours", "spread", "labour", "material", "amount", "currency", "basis"
  };

  private final Quotation quotation;
  private final NextBuild.Priced priced;
  private final Log log;
  private final NumberStyle style;
  private final StringBuilder text = new StringBuilder();

  private QuotationWriter(Quotation quotation, NextBuild.Priced priced, Log log) {
    this.quotation = quotation;
    this.priced = priced;
    this.log = log;
    this.style = new NumberStyle(log.head().locale(), log.head().inchDenominator());
  }

  /** One page that says what the price is and what it rests on. */
  public static String page(Quotation quotation, NextBuild.Priced priced, Log log) {
    return new QuotationWriter(quotation, priced, log).page();
  }

  private String page() {
    paragraph("", quotation.title());
    paragraph(
        "", "A quotation reckoned from the log \u201c" + log.head().title().value() + "\u201d.");
    text.append('\n');
    List<String[]> rows = new ArrayList<>();
    rows.add(new String[] {"Stage", "Hours", "Labour", "Material"});
    for (Quotation.Line line : quotation.lines()) {
      rows.add(
          new String[] {
            line.title(), hours(line.hours()), shown(line.labour()), shown(line.material())
          });
    }
    rows.add(
        new String[] {
          "In all", hours(quotation.hours()), shown(quotation.labour()), shown(quotation.material())
        });
    table(rows);
    text.append('\n');
    table(
        List.of(
            new String[] {"Labour and material", shown(sum())},
            new String[] {"Overhead", shown(quotation.overhead())},
            new String[] {"Margin", shown(quotation.margin())},
            new String[] {"Price before tax", shown(quotation.net())},
            new String[] {"Tax", shown(quotation.tax())},
            new String[] {"Price", shown(quotation.total())}));
    text.append('\n');
    paragraph(
        "",
        "The hours may be out by "
            + hours(quotation.spread())
            + " (standard deviation); the price is then most likely between "
            + shown(quotation.low())
            + " and "
            + shown(quotation.high())
            + ".");
    text.append('\n').append("How the hours came about\n");
    quotation.lines().forEach(l -> paragraph("- ", l.title() + ": " + l.basis() + "."));
    text.append('\n').append("What this rests on\n");
    quotation.restsOn().forEach(s -> paragraph("- ", s));
    priced.notes().forEach(s -> paragraph("- ", s));
    if (!priced.label().isNone()) {
      paragraph(
          "- ",
          "Figures under agreement went into it ("
              + String.join(", ", priced.label().agreements())
              + "): see to it who reads this page.");
    }
    return text.toString().replace(NARROW_SPACE, ' ');
  }

  private Quantity sum() {
    try {
      return quotation.labour().plus(quotation.material());
    } catch (QuantityException e) {
      throw new IllegalStateException("money is money", e);
    }
  }

  private String shown(Quantity money) {
    return style.show(money);
  }

  private String hours(Quantity hours) {
    return style.show(hours);
  }

  private void table(List<String[]> rows) {
    int columns = rows.get(0).length;
    int[] widths = new int[columns];
    for (int k = 0; k < columns; k++) {
      int column = k;
      widths[k] = rows.stream().mapToInt(r -> FactWriter.width(r[column])).max().orElse(0);
    }
    for (String[] row : rows) {
      text.append(row[0]).append(" ".repeat(widths[0] - FactWriter.width(row[0])));
      for (int k = 1; k < columns; k++) {
        text.append("  ").append(" ".repeat(widths[k] - FactWriter.width(row[k]))).append(row[k]);
      }
      text.append('\n');
    }
  }

  /** Broken at spaces; later lines are indented as far as {@code mark} reaches. */
  private void paragraph(String mark, String words) {
    String line = mark;
    boolean begun = false;
    for (String word : words.split(" ")) {
      if (begun && line.length() + 1 + word.length() > WIDTH) {
        text.append(line).append('\n');
        line = " ".repeat(mark.length());
        begun = false;
      }
      line += (begun ? " " : "") + word;
      begun = true;
    }
    text.append(line).append('\n');
  }

  public static String csv(Quotation quotation) {
    StringBuilder text = new StringBuilder();
    CSVFormat format =
        CSVFormat.RFC4180.builder().setHeader(COLUMNS).setRecordSeparator('\n').get();
    try (CSVPrinter printer = new CSVPrinter(text, format)) {
      String currency = quotation.total().unit().symbol();
      for (Quotation.Line line : quotation.lines()) {
        printer.printRecord(
            "stage",
            line.title(),
            number(line.hours()),
            number(line.spread()),
            number(line.labour()),
            number(line.material()),
            null,
            currency,
            line.basis());
      }
      for (Map.Entry<String, Quantity> sum : sums(quotation).entrySet()) {
        boolean labour = sum.getKey().equals("labour");
        printer.printRecord(
            sum.getKey(),
            null,
            labour ? number(quotation.hours()) : null,
            labour ? number(quotation.spread()) : null,
            null,
            null,
            number(sum.getValue()),
            currency,
            null);
      }
    } catch (IOException e) {
      throw new IllegalStateException("memory cannot fail to be written", e);
    }
    return text.toString();
  }

  public static String json(Quotation quotation, NextBuild.Priced priced) {
    Map<String, Object> sums = new LinkedHashMap<>();
    sums(quotation).forEach((name, sum) -> sums.put(name, decimal(sum)));
    Map<String, Object> is = new LinkedHashMap<>();
    is.put("title", quotation.title());
    is.put("currency", quotation.total().unit().symbol());
    is.put("stages", quotation.lines().stream().map(QuotationWriter::json).toList());
    is.put("hours", decimal(quotation.hours()));
    is.put("spread", decimal(quotation.spread()));
    is.put("sums", sums);
    is.put("restsOn", quotation.restsOn());
    is.put("notes", priced.notes());
    is.put("under", priced.label().agreements());
    return Json.lines(is) + "\n";
  }

  private static Map<String, Object> json(Quotation.Line line) {
    Map<String, Object> is = new LinkedHashMap<>();
    is.put("title", line.title());
    is.put("hours", decimal(line.hours()));
    is.put("spread", decimal(line.spread()));
    is.put("labour", decimal(line.labour()));
    is.put("material", decimal(line.material()));
    is.put("basis", line.basis());
    return is;
  }

  private static Map<String, Quantity> sums(Quotation quotation) {
    Map<String, Quantity> sums = new LinkedHashMap<>();
    sums.put("labour", quotation.labour());
    sums.put("material", quotation.material());
    sums.put("overhead", quotation.overhead());
    sums.put("margin", quotation.margin());
    sums.put("net", quotation.net());
    sums.put("tax", quotation.tax());
    sums.put("total", quotation.total());
    sums.put("low", quotation.low());
    sums.put("high", quotation.high());
    return sums;
  }

  private static String number(Quantity quantity) {
    return decimal(quantity).toPlainString();
  }

  private static BigDecimal decimal(Quantity quantity) {
    return quantity.unit().isMoney() ? quantity.value() : FactWriter.rounded(quantity.value());
  }
}
