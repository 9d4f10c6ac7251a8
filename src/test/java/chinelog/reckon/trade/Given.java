package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.label.Label;
import chinelog.log.records.Table;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import chinelog.reckon.Facts;
import chinelog.wording.Catalogue;
import chinelog.wording.Message;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A request written as a maker would write it, carried out through the public face. */
final class Given {

  private static final Pattern HEADING = Pattern.compile("([^\\[]*?)\\s*(?:\\[(.*)])?");

  private static final Catalogue ENGLISH = Catalogue.of(Facts.MESSAGES, Locale.ENGLISH);

  private final String reckoning;
  private final Map<String, Quantity> quantities = new TreeMap<>();
  private final Map<String, Table> tables = new TreeMap<>();
  private final Map<String, String> words = new TreeMap<>();

  /** The sentences that were read already. */
  private static final Set<List<String>> READ = ConcurrentHashMap.newKeySet();

  /** Reckoned when first asked for; null before, and after a change. */
  private @Nullable List<Yield> found;

  private Given(String reckoning) {
    this.reckoning = reckoning;
  }

  static Given the(String reckoning) {
    return new Given(reckoning);
  }

  Given quantity(String name, String text) {
    found = null;
    try {
      quantities.put(name, Quantity.parse(text));
    } catch (QuantityException e) {
      throw new IllegalArgumentException(text, e);
    }
    return this;
  }

  Given word(String name, String word) {
    found = null;
    words.put(name, word);
    return this;
  }

  Given table(String name, String csv) {
    found = null;
    tables.put(name, parse(name, csv));
    return this;
  }

  List<Yield> yields() throws TradeException {
    List<Yield> yields = found;
    if (yields == null) {
      yields =
          TradeReckonings.find(reckoning)
              .orElseThrow()
              .reckon(new Inputs(quantities, tables, words));
      yields.forEach(Given::requireWords);
      found = yields;
    }
    return yields;
  }

  /** What the reckoning draws of the same. */
  List<Part> parts() throws TradeException {
    List<Part> parts =
        TradeReckonings.find(reckoning).orElseThrow().draw(new Inputs(quantities, tables, words));
    for (Part part : parts) {
      assertThat(ENGLISH.text(part.title())).isNotBlank().doesNotContain("{");
      part.letters().forEach(l -> assertThat(ENGLISH.text(l.text())).doesNotContain("{"));
    }
    return parts;
  }

  /** What the reckoning shows of the same. */
  List<Sketch> sketches() throws TradeException {
    List<Sketch> sketches =
        TradeReckonings.find(reckoning).orElseThrow().sketch(new Inputs(quantities, tables, words));
    for (Sketch sketch : sketches) {
      assertThat(ENGLISH.text(sketch.title())).isNotBlank().doesNotContain("{");
      assertThat(ENGLISH.text(sketch.description())).endsWith(".").doesNotContain("{");
      assertThat(sketch.rows()).allMatch(r -> r.size() == sketch.head().size());
      for (Sketch.Shape shape : sketch.shapes()) {
        if (shape instanceof Sketch.Note note) {
          assertThat(ENGLISH.text(note.text())).doesNotContain("{");
          assertThat(note.at().x()).isBetween(0.0, (double) Sketch.WIDTH);
          assertThat(note.at().y()).isBetween(0.0, sketch.height());
        }
      }
    }
    return sketches;
  }

  /**
   * That a title and every sentence of a method are in the table of messages, and whole; once for
   * those of the same keys and as many figures.
   */
  private static void requireWords(Yield yield) {
    assertThat(yield.method()).isNotEmpty();
    List<String> words = new ArrayList<>(List.of(said(yield.title())));
    yield.method().forEach(m -> words.add(said(m)));
    if (!READ.add(words)) {
      return;
    }
    assertThat(ENGLISH.text(yield.title())).isNotBlank().doesNotContain("{");
    assertThat(inWords(yield.method())).endsWith(".").doesNotContain("{");
  }

  private static String said(Message message) {
    return message.key() + " " + message.arguments().size();
  }

  Quantity quantityOf(String yield) throws TradeException {
    return yields().stream()
        .filter(y -> y.name().equals(yield))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no " + yield))
        .value();
  }

  double in(String unit, String yield) throws TradeException {
    try {
      return quantityOf(yield).doubleIn(Unit.parse(unit));
    } catch (QuantityException e) {
      throw new IllegalArgumentException(unit, e);
    }
  }

  double number(String yield) throws TradeException {
    return in("", yield);
  }

  String methodOf(String yield) throws TradeException {
    return yields().stream()
        .filter(y -> y.name().equals(yield))
        .map(y -> inWords(y.method()))
        .findFirst()
        .orElseThrow();
  }

  static String resource(String file) {
    try (InputStream in = Objects.requireNonNull(Given.class.getResourceAsStream(file))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Table parse(String name, String csv) {
    List<Table.Column> columns = new ArrayList<>();
    List<Table.Row> rows = new ArrayList<>();
    String[] lines = csv.strip().split("\n");
    try {
      for (String heading : lines[0].split(",", -1)) {
        Matcher m = HEADING.matcher(heading.strip());
        if (!m.matches()) {
          throw new IllegalArgumentException(heading);
        }
        Unit unit = m.group(2) == null ? Unit.ONE : Unit.parse(m.group(2));
        columns.add(new Table.Column(m.group(1), unit, Label.NONE, place(name, 1, 1)));
      }
      for (int i = 1; i < lines.length; i++) {
        List<Table.Cell> cells = new ArrayList<>();
        String[] texts = lines[i].split(",", -1);
        for (int k = 0; k < columns.size(); k++) {
          String text = texts[k].strip();
          boolean number = text.matches("[+-]?[0-9.]+([eE][+-]?[0-9]+)?");
          cells.add(
              new Table.Cell(
                  text,
                  number ? Quantity.of(new BigDecimal(text), columns.get(k).unit()) : null,
                  place(name, i + 1, k + 1)));
        }
        rows.add(new Table.Row(cells, Label.NONE, place(name, i + 1, 1)));
      }
    } catch (QuantityException e) {
      throw new IllegalArgumentException(csv, e);
    }
    return new Table(name, columns, rows, Label.NONE, place(name, 1, 1));
  }

  private static Place place(String table, int line, int column) {
    return new Place("tables/" + table + ".csv", line, column);
  }

  private static String inWords(List<Message> sentences) {
    return sentences.stream().map(ENGLISH::text).collect(Collectors.joining(" "));
  }
}
