package chinelog.desk.settings;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.files.YamlText;
import chinelog.desk.settings.KeyForm.Kind;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.problem.ProblemException;
import chinelog.reckon.trade.TradeReckoning;
import chinelog.reckon.trade.TradeReckonings;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Limits, lots, stated facts and reckonings as they are written, each as a form whose fields are
 * written when they are left.
 */
record WrittenSettings(Bench bench) implements DeskPage {

  private static final String LOG = "log.yaml";
  private static final String FACTS = "facts.yaml";
  private static final String STOCK = "stock.yaml";

  @Override
  public void answerAt(Routes routes) {
    routes
        .get("/facts/limit", r -> reply(r, limit(r.text("name"))))
        .get("/facts/lots", r -> reply(r, lots(r.text("name"))))
        .get("/facts/asked", r -> reply(r, asked(r.text("name"))));
  }

  private Reply reply(WebRequest request, List<Map<String, Object>> forms) throws IOException {
    if (forms.isEmpty()) {
      return Reply.notFound();
    }
    Map<String, Object> values = new HashMap<>();
    values.put("forms", forms);
    values.put("agreements", bench.log().now().agreements());
    return bench.frame().part(request, DeskSection.FACTS, "written.ftlh", values);
  }

  private Optional<YamlText> read(String file) throws IOException {
    try {
      return Optional.of(YamlText.of(bench.files().read(Path.of(file))));
    } catch (ProblemException e) {
      // It cannot be read; Today says where.
      return Optional.empty();
    }
  }

  private List<Map<String, Object>> limit(String id) throws IOException {
    List<String> group = List.of("limits", id);
    return read(LOG)
        .filter(yaml -> yaml.has(group))
        .map(
            yaml ->
                new KeyForm(yaml, group)
                    .add("title", "limit.title", Kind.TEXT)
                    .add("rule", "limit.rule", Kind.TEXT)
                    .values(LOG))
        .map(List::of)
        .orElse(List.of());
  }

  private List<Map<String, Object>> lots(String material) throws IOException {
    List<Map<String, Object>> forms = new ArrayList<>();
    YamlText yaml = read(STOCK).orElse(null);
    for (int i = 0; yaml != null && i < yaml.size(List.of()); i++) {
      List<String> group = List.of(String.valueOf(i));
      if (yaml.find(List.of(String.valueOf(i), "material")).orElse("").equals(material)) {
        forms.add(
            new KeyForm(yaml, group)
                .add("title", "lot.title", Kind.TEXT)
                .add("bought", "lot.bought", Kind.TEXT)
                .add("price", "lot.price", Kind.TEXT)
                .add("supplier", "lot.supplier", Kind.TEXT)
                .add("date", "note.date", Kind.DATE)
                .values(STOCK));
      }
    }
    return forms;
  }

  /** A fact as facts.yaml states it; nothing if it does not. */
  List<Map<String, Object>> stated(String name) throws IOException {
    List<String> group = List.of(name);
    return read(FACTS)
        .filter(yaml -> yaml.find(group).isPresent() || yaml.find(List.of(name, "is")).isPresent())
        .map(
            yaml ->
                new KeyForm(yaml, group)
                    .addFigure("fact.is")
                    .add("title", "fact.title", Kind.TEXT)
                    .add("from", "fact.from", Kind.TEXT)
                    .add("on", "fact.on", Kind.DATE)
                    .values(FACTS))
        .map(List::of)
        .orElse(List.of());
  }

  private List<Map<String, Object>> asked(String prefix) throws IOException {
    Optional<YamlText> yaml = read(FACTS);
    Optional<TradeReckoning> reckoning =
        yaml.flatMap(y -> y.find(List.of(prefix, "reckon"))).flatMap(TradeReckonings::find);
    if (reckoning.isEmpty()) {
      return List.of();
    }
    List<String> tables = bench.log().now().log().tables().stream().map(t -> t.name()).toList();
    KeyForm form = new KeyForm(yaml.orElseThrow(), List.of(prefix));
    reckoning.get().parameters().forEach(p -> form.add(p, tables));
    return List.of(form.values(FACTS));
  }
}
