package chinelog.log;

import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.log.markdown.MarkdownReader;
import chinelog.log.markdown.Targets;
import chinelog.log.reading.Amounts;
import chinelog.log.reading.Fields;
import chinelog.log.reading.Kind;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Values;
import chinelog.log.reading.Yaml;
import chinelog.log.records.BookChapters;
import chinelog.log.records.Head;
import chinelog.log.records.LetterPlan;
import chinelog.log.records.Marked;
import chinelog.log.records.Paper;
import chinelog.log.records.Valuation;
import chinelog.log.text.Block;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.net.URI;
import java.net.URISyntaxException;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.ZoneId;
import java.util.Collections;
import java.util.Currency;
import java.util.IllformedLocaleException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Reads what log.yaml says of the whole build. */
record HeadReader(Fields log, Scope scope) {

  private static final Pattern SCALE = Pattern.compile("1\\s*[:/]\\s*([0-9]+(?:\\.[0-9]+)?)");
  private static final Pattern LOOSE_SCALE =
      Pattern.compile("(?:1\\s*(?:to|in|zu|:|/)\\s*)?([1-9][0-9]*)(?:th)?");
  private static final Map<String, String> SIGNS =
      Map.of(
          "£", "GBP", "€", "EUR", "pound", "GBP", "pounds", "GBP", "euro", "EUR", "euros", "EUR");
  private static final BigDecimal CLOSENESS = new BigDecimal("0.05");
  private static final int INCHES = 64;
  private static final List<String> VALUATIONS = List.of("fifo", "average");
  private static final List<String> PAPERS = List.of("a4", "letter");
  private static final List<String> CHAPTERS = List.of("stages", "posts");

  /**
   * A leaf of usual book paper, of 100 g/m² or so: common practice of printing houses, no source.
   */
  private static final double LEAF_MM = 0.12;

  private static final double THINNEST_MM = 0.03;

  private static final double THICKEST_MM = 0.6;

  static final String THEME = "slipway";
  static final String CURRENCY = "EUR";

  Head read(Marked<String> defaultTitle) {
    boolean titled = log.has("title");
    if (!titled && !scope.loose() && scope.agreements() != null) {
      log.require("title", "Building Merrow");
    }
    Marked<String> title = titled ? log.marked("title") : null;
    return new Head(
        title == null ? defaultTitle : title,
        log.marked("subject"),
        log.marked("kind"),
        about(),
        scale(),
        locale(),
        scope.zone(),
        log.marked("maker"),
        client(),
        scope.currency(),
        inches(),
        closeness(),
        log.quantity("rate", scope.moneyPerHour()),
        budgets(),
        address(),
        log.marked("licence"),
        log.text("theme", THEME),
        paper(),
        new PatternSheetsReader(log, scope).length(log, "leaf", LEAF_MM, THINNEST_MM, THICKEST_MM),
        chapters(),
        clocks(),
        hero(),
        log.flag("credit-photos"),
        valuation(),
        new PatternSheetsReader(log, scope).read(),
        new TalkReader(log, scope).read(),
        new PlanReader(log, scope).postLength(),
        letter(),
        new PlanReader(log, scope).figureGroups());
  }

  /** Who it is built for: the workshop's own, if nothing else is said of it. */
  private @Nullable Marked<String> client() {
    Marked<String> client = log.marked("client");
    return client == null || !client.label().isNone()
        ? client
        : new Marked<>(client.value(), Label.of(Agreement.OWN_CLIENT), client.place());
  }

  /** The next letter, whose words are told to those alone who are told the client's name. */
  private LetterPlan letter() {
    Yaml yaml = log.find("letter");
    if (yaml == null) {
      return LetterPlan.NONE;
    }
    Marked<String> client = client();
    Label around = client == null ? Label.NONE : client.label();
    Fields fields = Fields.of(yaml, scope, around, "since", "text", "under");
    Yaml text = fields.find("text");
    return new LetterPlan(
        fields.pastDate("since"), text == null ? List.of() : blocks(text, fields.label(), scope));
  }

  private Valuation valuation() {
    Yaml yaml = log.find("stock");
    if (yaml == null) {
      return Valuation.FIFO;
    }
    Fields stock = Fields.of(yaml, scope, Label.NONE, "valuation");
    Yaml.Scalar word = stock.scalar("valuation");
    boolean known =
        word != null
            && log.values().known(word, VALUATIONS, "a way to value stock that is known here")
                != null;
    return known && word != null
        ? Valuation.valueOf(word.text().toUpperCase(Locale.ROOT))
        : Valuation.FIFO;
  }

  private Paper paper() {
    Yaml.Scalar word = log.scalar("paper");
    boolean known =
        word != null
            && log.values().known(word, PAPERS, "a size of paper that is known here") != null;
    return known && word != null ? Paper.valueOf(word.text().toUpperCase(Locale.ROOT)) : Paper.A4;
  }

  private BookChapters chapters() {
    Yaml.Scalar word = log.scalar("chapters");
    boolean known =
        word != null
            && log.values().known(word, CHAPTERS, "what the chapters of a book can follow") != null;
    return known && word != null
        ? BookChapters.valueOf(word.text().toUpperCase(Locale.ROOT))
        : BookChapters.STAGES;
  }

  static ZoneId zone(Fields log, ZoneId otherwise, Scope scope) {
    Yaml.Scalar scalar = log.scalar("zone");
    if (scalar == null) {
      return otherwise;
    }
    try {
      return ZoneId.of(scalar.text());
    } catch (DateTimeException e) {
      scope.error(
          scalar.place(),
          Sentence.of("\"{0}\" is not a time zone.", scalar.text()),
          findZone(scalar.text())
              .<CharSequence>map(Suggestion::of)
              .orElse("Write one of the zone database, such as Europe/London."));
      return otherwise;
    }
  }

  /** The zone of a town, or the one that was misspelt. */
  private static Optional<String> findZone(String written) {
    SortedSet<String> zones = new TreeSet<>(ZoneId.getAvailableZoneIds());
    String town = "/" + written.strip().replace(' ', '_').toLowerCase(Locale.ROOT);
    return zones.stream()
        .filter(z -> z.toLowerCase(Locale.ROOT).endsWith(town))
        .findFirst()
        .or(() -> Suggestion.findNearest(written, zones));
  }

  static String currency(Fields log, Scope scope) {
    Yaml.Scalar scalar = log.scalar("currency");
    if (scalar == null) {
      return CURRENCY;
    }
    boolean known = isCurrency(scalar.text());
    if (!known) {
      String meant =
          SIGNS.getOrDefault(
              scalar.text().toLowerCase(Locale.ROOT), scalar.text().toUpperCase(Locale.ROOT));
      scope.error(
          scalar.place(),
          Sentence.of("\"{0}\" is not the code of a currency.", scalar.text()),
          isCurrency(meant)
              ? Sentence.of("Write \"{0}\".", meant)
              : "Write the three capital letters of ISO 4217, such as GBP, EUR or USD.");
    }
    return known ? scalar.text() : CURRENCY;
  }

  private static boolean isCurrency(String code) {
    return Currency.getAvailableCurrencies().stream()
        .anyMatch(c -> c.getCurrencyCode().equals(code));
  }

  private List<Block> about() {
    Yaml yaml = log.find("about");
    return yaml == null ? List.of() : blocks(yaml, Label.NONE, scope);
  }

  /** CommonMark in a value of YAML, which itself may be under an agreement. */
  static List<Block> blocks(Yaml yaml, Label outer, Scope scope) {
    Values values = new Values(scope);
    Values.Held held = values.held(yaml, outer);
    Yaml.Scalar scalar = values.scalar(held.value());
    if (scalar == null) {
      return List.of();
    }
    return new MarkdownReader(scalar.source(), "", scope).blocks(held.label());
  }

  private @Nullable Marked<BigDecimal> scale() {
    Marked<String> written = log.marked("scale");
    if (written == null) {
      return null;
    }
    Matcher m = SCALE.matcher(written.value());
    if (m.matches() && new BigDecimal(m.group(1)).signum() > 0) {
      return new Marked<>(new BigDecimal(m.group(1)), written.label(), written.place());
    }
    BigDecimal drawn = architects(written.value());
    if (drawn != null) {
      return new Marked<>(drawn, written.label(), written.place());
    }
    Matcher loose = LOOSE_SCALE.matcher(written.value());
    scope.error(
        written.place(),
        Sentence.of("\"{0}\" is not a scale.", written.value()),
        loose.matches()
            ? Sentence.of("Write 1:{0}.", loose.group(1))
            : "Write such as 1:16, or 1/4 in = 1 ft.");
    return null;
  }

  /** Whether a text can stand as the log's scale. */
  static boolean isScale(String text) {
    Matcher m = SCALE.matcher(text);
    return m.matches() && new BigDecimal(m.group(1)).signum() > 0 || architects(text) != null;
  }

  /** The 48 of {@code 1/4 in = 1 ft}; null for what is not of that kind. */
  private static @Nullable BigDecimal architects(String text) {
    String[] sides = text.split("=", -1);
    if (sides.length != 2) {
      return null;
    }
    try {
      Quantity drawn = Quantity.parse(sides[0].strip());
      Quantity real = Quantity.parse(sides[1].strip());
      if (!drawn.unit().isCompatible(Unit.METRE) || drawn.value().signum() <= 0) {
        return null;
      }
      BigDecimal ratio = real.valueIn(drawn.unit()).divide(drawn.value(), MathContext.DECIMAL128);
      BigDecimal plain = ratio.round(new MathContext(20)).stripTrailingZeros();
      return plain.compareTo(BigDecimal.ONE) < 0
          ? null
          : plain.setScale(Math.max(0, plain.scale()));
    } catch (QuantityException e) {
      return null;
    }
  }

  private Locale locale() {
    Yaml.Scalar scalar = log.scalar("language");
    if (scalar == null) {
      return Locale.ENGLISH;
    }
    try {
      Locale locale = new Locale.Builder().setLanguageTag(scalar.text()).build();
      if (List.of(Locale.getISOLanguages()).contains(locale.getLanguage())) {
        return locale;
      }
    } catch (IllformedLocaleException e) {
      // Said below.
    }
    scope.error(
        scalar.place(),
        Sentence.of("\"{0}\" is not the tag of a language.", scalar.text()),
        findLanguage(scalar.text())
            .<CharSequence>map(tag -> Sentence.of("Write \"{0}\".", tag))
            .orElse("Write such as en-GB, de or fr-CA."));
    return Locale.ENGLISH;
  }

  /** The tag of a language that is named in English or in its own words. */
  private static Optional<String> findLanguage(String name) {
    return Stream.of(Locale.getISOLanguages())
        .filter(tag -> tag.length() == 2)
        .filter(
            tag -> {
              Locale locale = Locale.forLanguageTag(tag);
              return locale.getDisplayLanguage(Locale.ENGLISH).equalsIgnoreCase(name)
                  || locale.getDisplayLanguage(locale).equalsIgnoreCase(name);
            })
        .findFirst();
  }

  private int inches() {
    Yaml.Scalar scalar = log.scalar("inches");
    if (scalar == null) {
      return INCHES;
    }
    if (scalar.text().matches("0|1|2|4|8|16|32|64|128|256")) {
      return Integer.parseInt(scalar.text());
    }
    scope.error(
        scalar.place(),
        Sentence.of("\"{0}\" does not say in which parts inches are shown.", scalar.text()),
        "Write 8, 16, 32 or 64, as in 1/64; or 0 for decimals.");
    return INCHES;
  }

  private BigDecimal closeness() {
    Marked<Quantity> share = log.quantity("closeness", Kind.SHARE);
    if (share == null) {
      return CLOSENESS;
    }
    BigDecimal value = Amounts.plainNumber(share.value());
    if (value.signum() > 0 && value.compareTo(BigDecimal.ONE) < 0) {
      return value;
    }
    scope.error(share.place(), "This share is not between 0 and 100 %.", "Write such as 5 %.");
    return CLOSENESS;
  }

  private SortedMap<String, Marked<Quantity>> budgets() {
    SortedMap<String, Marked<Quantity>> budgets = new TreeMap<>();
    for (Yaml.Pair pair : log.pairs("budgets")) {
      if (log.values().isFactName(pair.key())) {
        Kind kind = scope.budget(pair.key().text());
        Marked<Quantity> budget = log.quantity(pair.value(), kind);
        if (budget != null) {
          budgets.put(pair.key().text(), budget);
        }
      }
    }
    return Collections.unmodifiableSortedMap(budgets);
  }

  private @Nullable URI address() {
    Yaml yaml = log.find("address");
    String text = log.text("address");
    if (yaml == null || text == null) {
      return null;
    }
    try {
      URI uri = new URI(text);
      if (("https".equals(uri.getScheme()) || "http".equals(uri.getScheme()))
          && uri.getHost() != null) {
        return uri;
      }
    } catch (URISyntaxException e) {
      // Said below.
    }
    scope.error(
        yaml.place(),
        Sentence.of("\"{0}\" is not the address of a site.", text),
        "Write such as https://merrow.example/.");
    return null;
  }

  private SortedMap<String, Duration> clocks() {
    SortedMap<String, Duration> clocks = new TreeMap<>();
    for (Yaml.Pair pair : log.pairs("clocks")) {
      Yaml.Scalar scalar = log.values().scalar(pair.value());
      if (scalar != null) {
        Duration fast = Durations.parse(scalar.text());
        if (fast == null) {
          scope.error(
              scalar.place(),
              Sentence.of("\"{0}\" does not say how far a clock is fast.", scalar.text()),
              "Write such as 1 h 12 min; with a - before it for a slow clock.");
        } else {
          clocks.put(pair.key().text(), fast);
        }
      }
    }
    return Collections.unmodifiableSortedMap(clocks);
  }

  private @Nullable Marked<String> hero() {
    Yaml yaml = log.find("hero");
    if (yaml == null) {
      return null;
    }
    Values.Held held = log.values().held(yaml, Label.NONE);
    Yaml.Scalar scalar = log.values().scalar(held.value());
    String path = scalar == null ? null : Targets.photo(scalar, scope);
    return path == null ? null : new Marked<>(path, held.label(), held.value().place());
  }
}
