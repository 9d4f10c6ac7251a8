package chinelog.desk.settings;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.DeskWords;
import chinelog.desk.files.FileVersion;
import chinelog.desk.files.WriteOutcome;
import chinelog.desk.files.YamlText;
import chinelog.desk.files.YamlValue;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.json.Json;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Writes single values into the log's YAML files, each checked first by reading the log as it would
 * be: what would bring a new error is told and not written.
 */
public record Settings(Bench bench) implements DeskPage {

  private static final Set<String> FILES = Set.of("log.yaml", "facts.yaml", "stock.yaml");

  @Override
  public void answerAt(Routes routes) {
    routes
        .post("/set", r -> changed(r, Settings::set))
        .post("/set/add", r -> changed(r, Settings::add))
        .post("/set/try", this::tried)
        .post("/set/remove", r -> changed(r, (yaml, q) -> yaml.without(at(q))));
  }

  private interface Change {
    YamlText of(YamlText yaml, WebRequest request) throws ProblemException;
  }

  private Reply changed(WebRequest request, Change change) throws IOException {
    String file = request.text("file");
    if (!FILES.contains(file)) {
      return Reply.notFound();
    }
    String why =
        bench
            .frame()
            .words(request, DeskSection.AGREEMENTS)
            .text("did.set", file, String.join(" ", at(request)));
    WriteOutcome outcome =
        bench
            .files()
            .edit(
                Path.of(file),
                now -> checked(now, change.of(YamlText.of(now), request).text()),
                why);
    if (outcome instanceof WriteOutcome.Refused refused) {
      Problem problem = refused.problem();
      return Reply.json(Json.of(Map.of("refused", problem.words(request.locale()))));
    }
    return Reply.json("{}");
  }

  /** What would come of what is typed so far; nothing is written. */
  private Reply tried(WebRequest request) throws IOException {
    String file = request.text("file");
    if (!FILES.contains(file)) {
      return Reply.notFound();
    }
    FileVersion now = bench.files().read(Path.of(file));
    DeskWords words = bench.frame().words(request, DeskSection.FACTS);
    try {
      String text = add(YamlText.of(now), request).text();
      return Reply.json(new Trying(bench, words).of(now, text));
    } catch (ProblemException e) {
      String wrong = e.problem().words(request.locale());
      return Reply.json(Json.of(Map.of("wrong", Map.of("", wrong), "figures", List.of())));
    }
  }

  /**
   * The new text.
   *
   * @throws ProblemException with the first error that it would bring and the old one did not
   */
  private String checked(FileVersion now, String text) throws IOException {
    Set<Sentence> known = new HashSet<>();
    bench.log().now().problems().forEach(p -> known.add(p.what()));
    SortedMap<String, String> unsaved = new TreeMap<>();
    unsaved.put(now.path(), text);
    List<Problem> fresh =
        bench.log().as(unsaved).problems().stream()
            .filter(p -> p.isError() && !known.contains(p.what()))
            .toList();
    // What is wrong here may well be why something is wrong elsewhere.
    Optional<Problem> worst =
        fresh.stream()
            .filter(p -> p.place().file().equals(now.path()))
            .findFirst()
            .or(() -> fresh.stream().findFirst());
    if (worst.isPresent()) {
      throw new ProblemException(worst.get());
    }
    return text;
  }

  private static List<String> at(WebRequest request) {
    String at = request.text("at");
    return at.isEmpty() ? List.of() : Arrays.asList(at.split("/"));
  }

  /** One value, or the words of a list; nothing takes the key away. */
  private static YamlText set(YamlText yaml, WebRequest request) throws ProblemException {
    String value = request.text("value").strip();
    if (!request.text("list").isEmpty()) {
      return yaml.with(at(request), YamlValue.words(request.all("word")));
    }
    if (!request.all("word").isEmpty()) {
      return put(yaml, at(request), YamlValue.under(request.all("word")));
    }
    return value.isEmpty()
        ? yaml.without(at(request))
        : put(yaml, at(request), YamlValue.text(value));
  }

  /** A figure that stands by itself becomes a group of keys, to bear another key. */
  private static YamlText put(YamlText yaml, List<String> at, YamlValue value)
      throws ProblemException {
    List<String> group = at.subList(0, at.size() - 1);
    Optional<String> bare = group.isEmpty() ? Optional.empty() : yaml.find(group);
    if (bare.isEmpty()) {
      return yaml.with(at, value);
    }
    Map<String, YamlValue> keys = new LinkedHashMap<>();
    keys.put("is", YamlValue.text(bare.get()));
    keys.put(at.get(at.size() - 1), value);
    return yaml.with(group, new YamlValue.Keys(keys, true));
  }

  /**
   * A group of keys more, under a new key or at the end of a list. The fields named by {@code
   * order} are its keys; those that are empty are left out.
   */
  private static YamlText add(YamlText yaml, WebRequest request) throws ProblemException {
    Map<String, YamlValue> keys = new LinkedHashMap<>();
    for (String name : request.text("order").split(",")) {
      List<String> values =
          request.all(name).stream().map(String::strip).filter(v -> !v.isEmpty()).toList();
      if (request.text("lists").contains(name)) {
        if (!values.isEmpty() || name.equals("party-to")) {
          keys.put(name, YamlValue.words(values));
        }
      } else if (!values.isEmpty()) {
        keys.put(
            name, name.equals("under") ? YamlValue.under(values) : YamlValue.text(values.get(0)));
      }
    }
    String kind = request.text("kind");
    if (!kind.isEmpty()) {
      // A release names the thing first: "fact: hull.loa".
      Map<String, YamlValue> named = new LinkedHashMap<>();
      List<String> names =
          Arrays.stream(request.text("name").split(","))
              .map(String::strip)
              .filter(n -> !n.isEmpty())
              .toList();
      named.put(kind, names.size() == 1 ? YamlValue.text(names.get(0)) : YamlValue.words(names));
      named.putAll(keys);
      keys = named;
    }
    YamlValue group = new YamlValue.Keys(keys, false);
    String key = request.text("key").strip();
    if (request.text("item").isEmpty()) {
      if (key.isEmpty()) {
        return yaml;
      }
      List<String> at = new ArrayList<>(at(request));
      at.add(key);
      if (yaml.has(at)) {
        throw new ProblemException(
            Place.of(request.text("file")),
            Sentence.of("\u201c{0}\u201d is there already, and is not overwritten.", key),
            "Choose another word, or change what is there.");
      }
      YamlValue only = keys.get("is");
      return yaml.with(at, keys.size() == 1 && only != null ? only : group);
    }
    return yaml.plus(at(request), group);
  }
}
