package chinelog.log;

import chinelog.label.Label;
import chinelog.log.reading.Fields;
import chinelog.log.reading.Inventory;
import chinelog.log.reading.Kind;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Source;
import chinelog.log.reading.SourceFile;
import chinelog.log.reading.Values;
import chinelog.log.reading.Yaml;
import chinelog.log.reading.YamlParser;
import chinelog.log.records.Log;
import chinelog.log.records.Marked;
import chinelog.log.records.PricePlan;
import chinelog.log.records.PricePlan.Driver;
import chinelog.log.records.Stage;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Reads how the next build is to be priced. */
public final class PriceReader {

  private static final List<String> DRIVERS =
      Stream.of(Driver.values()).map(PriceReader::word).toList();
  private static final List<String> MEASURES =
      DRIVERS.stream().filter(d -> !d.equals("fixed")).toList();
  private static final String[] KEYS = {
    "title",
    "stages",
    "built",
    "wanted",
    "rate",
    "number",
    "learning",
    "wastage",
    "overhead",
    "margin",
    "tax",
    "under"
  };
  private static final BigDecimal MOST = BigDecimal.valueOf(1_000_000);

  private final Log log;
  private final Scope scope;
  private final Problems problems;
  private Label label = Label.NONE;

  private PriceReader(Log log, LocalDate today, Problems problems) {
    this.log = log;
    this.problems = problems;
    this.scope =
        new Scope(
            Inventory.empty(log.folder()),
            today,
            log.head().zone(),
            log.head().currency(),
            log.agreements().keySet(),
            false,
            problems);
  }

  /**
   * What was read.
   *
   * @param plan null where the file could not be read or anything in it is wrong
   */
  public record Reading(@Nullable PricePlan plan, List<Problem> problems) {}

  /**
   * Reads a file such as {@code quotation.yaml}.
   *
   * @param log whose stages, money and agreements it speaks of
   * @param today nothing in it may be dated later
   */
  public static Reading read(Path file, Log log, LocalDate today) {
    Problems problems = new Problems();
    String name = String.valueOf(file.getFileName());
    Source source = SourceFile.read(file, name, problems);
    Yaml root = source == null ? null : YamlParser.parse(source, problems);
    if (source != null && root == null && problems.list().isEmpty()) {
      problems.error(
          Place.of(name), "Nothing is written here.", "Name the stages to be priced at least.");
    }
    PricePlan plan = root == null ? null : new PriceReader(log, today, problems).plan(root);
    boolean good = problems.list().stream().noneMatch(Problem::isError);
    return new Reading(good ? plan : null, problems.list());
  }

  private @Nullable PricePlan plan(Yaml root) {
    Fields fields = Fields.of(root, scope, Label.NONE, KEYS);
    label = fields.label();
    fields.require("stages", "{planking: area}");
    SortedMap<String, Place> places = new TreeMap<>();
    for (String key : KEYS) {
      if (fields.has(key)) {
        places.put(key, fields.place(key));
      }
    }
    Marked<Quantity> rate = fields.quantity("rate", scope.moneyPerHour());
    note(rate);
    return new PricePlan(
        fields.text("title", "The next build"),
        stages(fields),
        built(fields),
        wanted(fields),
        rate == null ? null : rate.value(),
        number(fields),
        share(fields, "learning", "100 %"),
        share(fields, "wastage", "0 %"),
        share(fields, "overhead", "0 %"),
        share(fields, "margin", "0 %"),
        share(fields, "tax", "0 %"),
        places,
        label,
        fields.place());
  }

  private void note(@Nullable Marked<?> value) {
    if (value != null) {
      label = label.join(value.label());
    }
  }

  private List<PricePlan.StagePrice> stages(Fields fields) {
    List<String> known = log.stages().stream().map(Stage::id).toList();
    List<PricePlan.StagePrice> stages = new ArrayList<>();
    for (Yaml.Pair pair : fields.pairs("stages")) {
      String id = fields.values().known(pair.key(), known, "a stage of this log");
      PricePlan.StagePrice stage = id == null ? null : stage(id, pair);
      if (stage != null) {
        stages.add(stage);
      }
    }
    return stages;
  }

  private PricePlan.@Nullable StagePrice stage(String id, Yaml.Pair pair) {
    Place place = pair.key().place();
    if (!(pair.value() instanceof Yaml.Mapping mapping)) {
      Driver driver = driver(new Values(scope).scalar(pair.value()));
      return driver == null
          ? null
          : new PricePlan.StagePrice(id, driver, percent("100 %"), percent("100 %"), true, place);
    }
    Fields fields = new Fields(mapping, scope, Label.NONE, "driver", "low", "high", "learnt");
    Yaml driver = fields.require("driver", "area");
    Driver known = driver == null ? null : driver(new Values(scope).scalar(driver));
    Quantity low = share(fields, "low", "100 %");
    Quantity high = share(fields, "high", "100 %");
    boolean learnt = !fields.has("learnt") || fields.flag("learnt");
    return known == null ? null : new PricePlan.StagePrice(id, known, low, high, learnt, place);
  }

  private @Nullable Driver driver(Yaml.@Nullable Scalar word) {
    if (word == null
        || new Values(scope).known(word, DRIVERS, "something that work grows with") == null) {
      return null;
    }
    return Driver.valueOf(word.text().toUpperCase(Locale.ROOT));
  }

  private SortedMap<Driver, Marked<String>> built(Fields fields) {
    SortedMap<Driver, Marked<String>> built = new TreeMap<>();
    for (Yaml.Pair pair : fields.pairs("built")) {
      Driver driver = measure(pair);
      Marked<String> value = driver == null ? null : fields.marked(pair.value());
      if (driver != null && value != null) {
        note(value);
        built.put(driver, value);
        if (!Values.FACT.matcher(value.value()).matches()) {
          refuseUnread(value);
        }
      }
    }
    return built;
  }

  private void refuseUnread(Marked<String> value) {
    try {
      Quantity.parse(value.value());
    } catch (QuantityException e) {
      problems.error(
          value.place(),
          Sentence.of("\"{0}\" is neither a quantity nor the name of a fact.", value.value()),
          "Write such as 700 mm or hull.loa.");
    }
  }

  private SortedMap<Driver, Quantity> wanted(Fields fields) {
    SortedMap<Driver, Quantity> wanted = new TreeMap<>();
    for (Yaml.Pair pair : fields.pairs("wanted")) {
      Driver driver = measure(pair);
      Marked<Quantity> value = driver == null ? null : fields.quantity(pair.value(), Kind.ANY);
      if (driver != null && value != null) {
        note(value);
        wanted.put(driver, value.value());
      }
    }
    return wanted;
  }

  private @Nullable Driver measure(Yaml.Pair pair) {
    return new Values(scope).known(pair.key(), MEASURES, "a measure of a build") == null
        ? null
        : Driver.valueOf(pair.key().text().toUpperCase(Locale.ROOT));
  }

  private int number(Fields fields) {
    Marked<Quantity> given = fields.quantity("number", Kind.SHARE);
    if (given == null) {
      return 1;
    }
    note(given);
    BigDecimal number = given.value().value();
    boolean whole =
        given.value().unit().equals(Unit.ONE)
            && number.stripTrailingZeros().scale() <= 0
            && number.signum() > 0
            && number.compareTo(MOST) <= 0;
    if (!whole) {
      problems.error(
          given.place(),
          Sentence.of("\"{0}\" does not say which build of its kind this is.", given.value()),
          "Write a whole number, such as 2 for the second.");
      return 1;
    }
    return number.intValueExact();
  }

  private Quantity share(Fields fields, String key, String otherwise) {
    Marked<Quantity> given = fields.quantity(key, Kind.SHARE);
    note(given);
    return given == null ? percent(otherwise) : given.value();
  }

  private static Quantity percent(String text) {
    try {
      return Quantity.parse(text);
    } catch (QuantityException e) {
      throw new IllegalStateException(text, e);
    }
  }

  private static String word(Driver driver) {
    return driver.name().toLowerCase(Locale.ROOT);
  }
}
