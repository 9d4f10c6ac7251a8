package chinelog.log;

import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.log.records.BookChapters;
import chinelog.log.records.Entry;
import chinelog.log.records.Head;
import chinelog.log.records.LetterPlan;
import chinelog.log.records.Limit;
import chinelog.log.records.Log;
import chinelog.log.records.Lot;
import chinelog.log.records.Marked;
import chinelog.log.records.Paper;
import chinelog.log.records.PatternSheets;
import chinelog.log.records.Request;
import chinelog.log.records.Sheet;
import chinelog.log.records.Stage;
import chinelog.log.records.Statement;
import chinelog.log.records.Table;
import chinelog.log.records.TalkPlan;
import chinelog.log.records.Valuation;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Builds logs for tests, without files: {@code LogFixture.merrow().state("full.loa", "11.20
 * m").build()}.
 *
 * <p>Agreements are given as words; those named are all known.
 */
public final class LogFixture {

  public static final ZoneId ZONE = ZoneId.of("Europe/London");

  private @Nullable BigDecimal scale;
  private Label scaleLabel = Label.NONE;
  private Locale locale = Locale.UK;
  private int inchDenominator = 64;
  private Valuation valuation = Valuation.FIFO;
  private @Nullable Marked<Quantity> rate;
  private List<Block> about = List.of();
  private final SortedMap<String, Marked<Quantity>> budgets = new TreeMap<>();
  private final List<Stage> stages = new ArrayList<>();
  private final List<Limit> limits = new ArrayList<>();
  private final List<Statement> statements = new ArrayList<>();
  private final List<Request> requests = new ArrayList<>();
  private final List<Lot> stock = new ArrayList<>();
  private final List<Table> tables = new ArrayList<>();
  private final List<EntryFixture> entries = new ArrayList<>();
  private final List<Sheet> sheets = new ArrayList<>();

  private LogFixture() {}

  /** An empty log of the model of the pilot launch Merrow, at no scale. */
  public static LogFixture merrow() {
    return new LogFixture();
  }

  public LogFixture scale(String denominator, String... under) {
    scale = new BigDecimal(denominator);
    scaleLabel = Label.of(under);
    return this;
  }

  public LogFixture locale(Locale language) {
    locale = language;
    return this;
  }

  public LogFixture valuation(Valuation how) {
    valuation = how;
    return this;
  }

  public LogFixture inches(int denominator) {
    inchDenominator = denominator;
    return this;
  }

  public LogFixture rate(String perHour, String... under) {
    rate = new Marked<>(quantity(perHour), Label.of(under), Place.of("log.yaml", 10, 1));
    return this;
  }

  public LogFixture budget(String name, String amount, String... under) {
    budgets.put(name, new Marked<>(quantity(amount), Label.of(under), Place.of("log.yaml", 12, 1)));
    return this;
  }

  public LogFixture about(Block... blocks) {
    about = List.of(blocks);
    return this;
  }

  public LogFixture stage(
      String id,
      @Nullable LocalDate start,
      @Nullable LocalDate finish,
      @Nullable String hours,
      String... under) {
    stages.add(
        new Stage(
            id,
            id.substring(0, 1).toUpperCase(Locale.ROOT) + id.substring(1),
            List.of(),
            start,
            finish,
            hours == null ? null : quantity(hours),
            Label.of(under),
            Place.of("log.yaml", 20 + stages.size(), 3)));
    return this;
  }

  public LogFixture stage(String id) {
    return stage(id, null, null, null);
  }

  public LogFixture limit(String id, String rule, String... under) {
    limits.add(
        new Limit(id, id, rule, Label.of(under), Place.of("log.yaml", 40 + limits.size(), 1)));
    return this;
  }

  public LogFixture state(String name, String expression, String... under) {
    return stateFrom(name, expression, null, under);
  }

  public LogFixture stateFrom(
      String name, String expression, @Nullable String source, String... under) {
    int line = 1 + statements.size();
    statements.add(
        new Statement(
            name,
            "",
            expression,
            source,
            null,
            Label.of(under),
            Place.of("facts.yaml", line, 1),
            Place.of("facts.yaml", line, name.length() + 3)));
    return this;
  }

  public LogFixture request(String prefix, String reckoning, String... inputs) {
    SortedMap<String, Marked<String>> written = new TreeMap<>();
    for (int i = 0; i < inputs.length; i += 2) {
      written.put(
          inputs[i], new Marked<>(inputs[i + 1], Label.NONE, Place.of("facts.yaml", 90, 1 + i)));
    }
    requests.add(
        new Request(
            prefix,
            new Marked<>(reckoning, Label.NONE, Place.of("facts.yaml", 90, 1)),
            written,
            Label.NONE,
            Place.of("facts.yaml", 90, 1)));
    return this;
  }

  public LogFixture lot(
      String material,
      String bought,
      @Nullable String price,
      @Nullable LocalDate date,
      String... under) {
    Place place = Place.of("stock.yaml", 1 + stock.size(), 3);
    stock.add(
        new Lot(
            material,
            material.replace('_', ' '),
            quantity(bought),
            price == null ? null : new Marked<>(quantity(price), Label.NONE, place),
            null,
            date,
            List.of(),
            "",
            Label.of(under),
            place));
    return this;
  }

  public LogFixture table(Table table) {
    tables.add(table);
    return this;
  }

  public LogFixture sheet(String path, String... under) {
    sheets.add(new Sheet(path, path, Label.of(under), List.of(), Place.of(path)));
    return this;
  }

  /** An entry of that day, with what {@code told} adds to it. */
  public LogFixture entry(
      String id, LocalDate date, String stage, java.util.function.Consumer<EntryFixture> told) {
    EntryFixture entry = new EntryFixture(id, date, stage);
    told.accept(entry);
    entries.add(entry);
    return this;
  }

  public Log build() {
    BigDecimal denominator = scale;
    Head head =
        new Head(
            marked("Building Merrow"),
            marked("Merrow"),
            marked("harbour pilot launch"),
            about,
            denominator == null
                ? null
                : new Marked<>(denominator, scaleLabel, Place.of("log.yaml", 4, 8)),
            locale,
            ZONE,
            marked("Tern Lane Workshop"),
            null,
            "GBP",
            inchDenominator,
            new BigDecimal("0.05"),
            rate,
            budgets,
            null,
            null,
            "",
            Paper.A4,
            0.12,
            BookChapters.STAGES,
            new TreeMap<>(),
            null,
            false,
            valuation,
            PatternSheets.USUAL,
            TalkPlan.USUAL,
            null,
            LetterPlan.NONE,
            List.of());
    return new Log(
        Path.of("merrow"),
        head,
        stages,
        agreements(),
        List.of(),
        List.of(),
        limits,
        List.of(),
        List.of(),
        statements,
        requests,
        stock,
        tables,
        entries.stream().map(EntryFixture::build).toList(),
        List.of(),
        sheets);
  }

  private static SortedMap<String, Agreement> agreements() {
    SortedMap<String, Agreement> all = new TreeMap<>();
    for (String id : List.of("client", "lines", "sheets")) {
      all.put(
          id,
          new Agreement(
              id,
              "Skerrick Yard",
              "what is so marked",
              null,
              null,
              false,
              chinelog.label.Presence.NOTE));
    }
    return all;
  }

  private static Marked<String> marked(String text) {
    return new Marked<>(text, Label.NONE, Place.of("log.yaml", 1, 1));
  }

  public static Quantity quantity(String text) {
    try {
      return Quantity.parse(text);
    } catch (QuantityException e) {
      throw new IllegalArgumentException(e.getMessage(), e);
    }
  }

  /** A paragraph that says {@code before} and names a fact. */
  public static Block paragraph(String before, String fact, String written) {
    Place place = Place.of("entries/note.md", 9, 5);
    return new Block.Paragraph(
        List.of(new Inline.Text(before), new Inline.FactLink(fact, written, place)),
        Label.NONE,
        place);
  }

  /** What an entry tells. */
  public static final class EntryFixture {

    private final String id;
    private final LocalDate date;
    private final String stage;
    private Label label = Label.NONE;
    private final List<Block> text = new ArrayList<>();
    private final List<Entry.Worked> worked = new ArrayList<>();
    private final List<Entry.Use> used = new ArrayList<>();
    private final List<Entry.Measurement> measured = new ArrayList<>();
    private final List<Entry.Weighing> weighed = new ArrayList<>();

    private EntryFixture(String id, LocalDate date, String stage) {
      this.id = id;
      this.date = date;
      this.stage = stage;
    }

    public EntryFixture under(String... agreements) {
      label = Label.of(agreements);
      return this;
    }

    public EntryFixture says(Block block) {
      text.add(block);
      return this;
    }

    public EntryFixture worked(String duration, String... under) {
      try {
        long minutes = quantity(duration).valueIn(Unit.MINUTE).longValueExact();
        worked.add(
            new Entry.Worked(null, null, Duration.ofMinutes(minutes), Label.of(under), place(3)));
      } catch (QuantityException e) {
        throw new IllegalArgumentException(e.getMessage(), e);
      }
      return this;
    }

    public EntryFixture worked(LocalTime from, LocalTime to) {
      ZonedDateTime start = date.atTime(from).atZone(ZONE);
      ZonedDateTime end = (to.isAfter(from) ? date : date.plusDays(1)).atTime(to).atZone(ZONE);
      worked.add(new Entry.Worked(start, end, Duration.between(start, end), Label.NONE, place(3)));
      return this;
    }

    public EntryFixture used(String material, String amount, String... under) {
      return usedAt(material, amount, "", under);
    }

    /** Used somewhere, such as {@code deck}. */
    public EntryFixture usedAt(String material, String amount, String where, String... under) {
      used.add(
          new Entry.Use(
              material, quantity(amount), where, Label.of(under), place(4 + used.size())));
      return this;
    }

    public EntryFixture measured(String fact, String value, String... under) {
      measured.add(
          new Entry.Measurement(
              fact, quantity(value), "", Label.of(under), place(20 + measured.size())));
      return this;
    }

    public EntryFixture weighed(String part, String mass, String... under) {
      weighed.add(
          new Entry.Weighing(
              part, quantity(mass), "", null, null, Label.of(under), place(30 + weighed.size())));
      return this;
    }

    private Place place(int line) {
      return Place.of("entries/" + id + ".md", line, 3);
    }

    private Entry build() {
      return new Entry(
          id,
          new Marked<>(id, Label.NONE, place(2)),
          date,
          stage,
          List.copyOf(text),
          List.copyOf(worked),
          List.copyOf(used),
          List.copyOf(measured),
          List.copyOf(weighed),
          label,
          place(1));
    }
  }
}
