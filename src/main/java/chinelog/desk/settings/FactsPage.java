package chinelog.desk.settings;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.DeskWords;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.problem.Sentence;
import chinelog.quantity.NumberStyle;
import chinelog.reckon.Explanation;
import chinelog.reckon.Fact;
import chinelog.reckon.FactId;
import chinelog.reckon.Facts;
import chinelog.reckon.trade.Parameter;
import chinelog.reckon.trade.TradeReckoning;
import chinelog.reckon.trade.TradeReckonings;
import chinelog.wording.Catalogue;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Facts with how each came about, stock with what is left, limits with their margins. */
public final class FactsPage implements DeskPage {

  private final Bench bench;
  private final WrittenSettings written;

  public FactsPage(Bench bench) {
    this.bench = bench;
    this.written = new WrittenSettings(bench);
  }

  @Override
  public void answerAt(Routes routes) {
    routes
        .get("/facts", this::show)
        .get("/facts/how", this::how)
        .get("/facts/reckoning", this::reckoning);
    written.answerAt(routes);
  }

  private NumberStyle style(DeskWords words, Snapshot now) {
    return new NumberStyle(words.locale(), now.log().head().inchDenominator());
  }

  private Reply show(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    DeskWords words = bench.frame().words(request, DeskSection.FACTS);
    NumberStyle style = style(words, now);
    Map<String, Object> values = new HashMap<>();
    values.put("facts", facts(now, words, style));
    values.put("materials", materials(now, style));
    values.put("limits", limits(now, style));
    values.put("agreements", now.agreements());
    values.put(
        "hazards", List.of("resin", "superglue", "dust", "lead", "solvent", "blade", "lithium"));
    values.put(
        "reckonings",
        TradeReckonings.names().stream()
            .flatMap(n -> TradeReckonings.find(n).stream())
            .map(r -> Map.of("name", r.name(), "title", words(r.title(), request.locale())))
            .toList());
    values.put(
        "asked",
        now.log().requests().stream()
            .map(r -> Map.of("prefix", r.prefix(), "reckoning", r.reckoning().value()))
            .toList());
    values.put("today", now.today().toString());
    values.put("currency", now.log().head().currency());
    return bench.frame().page(request, DeskSection.FACTS, "facts.ftlh", values);
  }

  private static List<Map<String, Object>> facts(Snapshot now, DeskWords words, NumberStyle style) {
    Catalogue titles = Catalogue.of(Facts.MESSAGES, words.locale());
    List<Map<String, Object>> lines = new ArrayList<>();
    for (Fact fact : now.opened().facts().inOrder()) {
      lines.add(
          Map.of(
              "name", fact.name(),
              "title", titles.text(fact.title()),
              "value", style.show(fact.value()),
              "origin", "origin." + fact.origin().name().toLowerCase(Locale.ROOT),
              "under", List.copyOf(fact.label().agreements())));
    }
    return lines;
  }

  private static List<Map<String, Object>> materials(Snapshot now, NumberStyle style) {
    Facts facts = now.opened().facts();
    List<Map<String, Object>> lines = new ArrayList<>();
    for (Facts.MaterialSum material : facts.materials()) {
      lines.add(
          Map.of(
              "id", material.material(),
              "title", material.title(),
              "bought", shown(facts, material.boughtFact(), style),
              "used", shown(facts, used(material), style),
              "left", shown(facts, material.leftFact(), style),
              "under", List.copyOf(material.label().agreements())));
    }
    return lines;
  }

  private static String used(Facts.MaterialSum material) {
    return new FactId.Stock(material.material(), FactId.Balance.USED).name();
  }

  private static String shown(Facts facts, String name, NumberStyle style) {
    return facts.find(name).map(f -> style.show(f.value())).orElse("");
  }

  private static List<Map<String, Object>> limits(Snapshot now, NumberStyle style) {
    List<Map<String, Object>> lines = new ArrayList<>();
    for (Facts.LimitCheck check : now.opened().facts().limits()) {
      lines.add(
          Map.of(
              "id", check.limit().id(),
              "title", check.limit().title(),
              "rule", check.limit().rule(),
              "value", style.show(check.value()),
              "margin", style.show(check.margin()),
              "verdict", "verdict." + check.verdict().name().toLowerCase(Locale.ROOT)));
    }
    return lines;
  }

  /** How one fact came about, and a field for what was stated of it. */
  private Reply how(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    Optional<Fact> fact = now.opened().facts().find(request.text("name"));
    if (fact.isEmpty()) {
      return Reply.notFound();
    }
    Map<String, Object> values = new HashMap<>();
    values.put("name", fact.get().name());
    values.put("tree", Explanation.tree(fact.get(), now.log(), now.opened().facts()));
    values.put("file", fact.get().place().file());
    values.put("line", fact.get().place().line());
    values.put("column", fact.get().place().column());
    values.put("forms", written.stated(fact.get().name()));
    values.put("agreements", now.agreements());
    return bench.frame().part(request, DeskSection.FACTS, "how.ftlh", values);
  }

  /** What the records of reckonings say in English. */
  private static String words(String english, Locale locale) {
    return Sentence.of(english).in(locale);
  }

  /** The keys of a reckoning, as a form. */
  private Reply reckoning(WebRequest request) throws IOException {
    Optional<TradeReckoning> found = TradeReckonings.find(request.text("name"));
    if (found.isEmpty()) {
      return Reply.html("");
    }
    List<Map<String, Object>> parameters = new ArrayList<>();
    for (Parameter parameter : found.get().parameters()) {
      parameters.add(
          Map.of(
              "name", parameter.name(),
              "title", words(parameter.title(), request.locale()),
              "isWord", parameter.kind() == Parameter.Kind.WORD,
              "isTable", parameter.kind() == Parameter.Kind.TABLE,
              "unit", parameter.unit().symbol(),
              "choices", parameter.choices(),
              "required", parameter.required(),
              "fallback", parameter.otherwise().in(request.locale())));
    }
    Map<String, Object> values = new HashMap<>();
    values.put("title", words(found.get().title(), request.locale()));
    values.put("example", found.get().example().facts());
    values.put("exampleTables", found.get().example().tables());
    values.put("parameters", parameters);
    values.put("tables", bench.log().now().log().tables().stream().map(t -> t.name()).toList());
    return bench.frame().part(request, DeskSection.FACTS, "reckoning.ftlh", values);
  }
}
