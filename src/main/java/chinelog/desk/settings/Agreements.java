package chinelog.desk.settings;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.DeskWords;
import chinelog.desk.bench.Lines;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.files.YamlText;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.label.Agreement;
import chinelog.label.Presence;
import chinelog.log.records.Readers;
import chinelog.log.records.Statement;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.withhold.Register;
import chinelog.withhold.Withholder;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Agreements, readers and releases, and the log as seen by any readers beside the whole of it. */
public record Agreements(Bench bench) implements DeskPage {

  private static final List<String> KINDS = List.of("fact", "entry", "photo", "sheet");

  @Override
  public void answerAt(Routes routes) {
    routes
        .get("/agreements", this::show)
        .get("/agreements/seen", this::seen)
        .get("/agreements/register", this::register);
  }

  private Reply show(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    Map<String, Object> values = new HashMap<>();
    values.put("agreements", agreements(now));
    values.put("grantable", now.agreements());
    values.put("readers", readers(now));
    values.put("releases", releases());
    values.put("outputs", Arrays.stream(Readers.Output.values()).map(Agreements::word).toList());
    values.put("facts", List.copyOf(now.opened().facts().byName().keySet()));
    values.put("entries", now.log().notes().stream().map(e -> e.id()).toList());
    values.put("today", now.today().toString());
    values.put("release", request.text("release"));
    return bench.frame().page(request, DeskSection.AGREEMENTS, "agreements.ftlh", values);
  }

  /** As log.yaml writes it, such as {@code photo-sheet}. */
  private static String word(Readers.Output output) {
    return output.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static List<Map<String, Object>> agreements(Snapshot now) {
    List<Map<String, Object>> lines = new ArrayList<>();
    for (Agreement agreement : now.promises()) {
      Map<String, Object> line = new HashMap<>();
      line.put("id", agreement.id());
      line.put("with", agreement.with());
      line.put("covers", agreement.covers());
      line.put("from", String.valueOf(agreement.from() == null ? "" : agreement.from()));
      line.put("until", String.valueOf(agreement.until() == null ? "" : agreement.until()));
      line.put("free", agreement.freeAfterwards());
      line.put("nothing", agreement.presence() == Presence.NOTHING);
      lines.add(line);
    }
    return lines;
  }

  private static List<Map<String, Object>> readers(Snapshot now) {
    List<Map<String, Object>> lines = new ArrayList<>();
    for (Readers group : now.log().readers()) {
      lines.add(
          Map.of(
              "id",
              group.id(),
              "title",
              group.title(),
              "partyTo",
              List.copyOf(group.partyTo()),
              "gets",
              group.outputs().stream().map(Agreements::word).toList()));
    }
    return lines;
  }

  /** As they are written, so that each keeps its place in the list, whatever is wrong with it. */
  private List<Map<String, Object>> releases() throws IOException {
    YamlText log;
    try {
      log = YamlText.of(bench.files().read(Path.of("log.yaml")));
    } catch (ProblemException e) {
      // The log cannot be read; Today says where.
      return List.of();
    }
    List<Map<String, Object>> lines = new ArrayList<>();
    for (int i = 0; i < log.size(List.of("releases")); i++) {
      List<String> item = List.of("releases", String.valueOf(i));
      String kind =
          KINDS.stream().filter(k -> log.has(in(item, k))).findFirst().orElse(KINDS.get(0));
      lines.add(
          Map.of(
              "kind", kind,
              "name", String.join(", ", log.words(in(item, kind))),
              "under", String.join(", ", log.words(in(item, "under"))),
              "by", log.find(in(item, "by")).orElse(""),
              "on", log.find(in(item, "on")).orElse(""),
              "words", log.find(in(item, "words")).orElse("").strip(),
              "readers", log.words(in(item, "for"))));
    }
    return lines;
  }

  private static List<String> in(List<String> item, String key) {
    List<String> at = new ArrayList<>(item);
    at.add(key);
    return at;
  }

  /** A page of the whole site and the same page as readers would get it, side by side. */
  private Reply seen(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    List<Readers> all = now.log().readers();
    Readers theirs = now.findReaders(request.text("for")).orElse(all.get(0));
    Readers whole =
        all.stream()
            .filter(r -> r.partyTo().containsAll(now.log().agreements().keySet()))
            .findFirst()
            .orElse(theirs);
    Map<String, Object> values = new HashMap<>();
    values.put("readers", readers(now));
    values.put("for", theirs.id());
    values.put("forTitle", theirs.title());
    values.put("whole", whole.id());
    values.put("wholeTitle", whole.title());
    values.put("page", request.find("page").orElse("index.html"));
    List<Map<String, String>> pages = new ArrayList<>();
    if (!now.opened().hasErrors()) {
      now.site(whole)
          .pages()
          .forEach((path, title) -> pages.add(Map.of("path", path, "title", title)));
    }
    values.put("pages", pages);
    return bench.frame().page(request, DeskSection.AGREEMENTS, "seen.ftlh", values);
  }

  /** Problems, those that are figures to be worked out with the ways out. */
  private static List<Map<String, Object>> problems(
      Snapshot now, Withholder.Withheld withheld, Locale locale) {
    Set<String> stated =
        now.log().statements().stream().map(Statement::name).collect(Collectors.toSet());
    List<Map<String, Object>> lines = new ArrayList<>();
    for (Problem problem : withheld.problems()) {
      Map<String, Object> line = new HashMap<>(Lines.of(List.of(problem), locale, now).get(0));
      for (Withholder.WayOut way : withheld.waysOut()) {
        if (way.problem().equals(problem)) {
          line.put("secret", String.join(", ", way.secrets()));
          line.put("under", List.copyOf(way.label().agreements()));
          // Only what facts.yaml states is marked there; all else where it was written.
          line.put(
              "ways",
              way.withhold().stream()
                  .filter(stated::containsAll)
                  .map(names -> names.stream().sorted().toList())
                  .toList());
        }
      }
      lines.add(line);
    }
    return lines;
  }

  /** What readers would not get, where it stands and under what; and what could be worked out. */
  private Reply register(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    Optional<Readers> readers = now.findReaders(request.text("for"));
    if (readers.isEmpty() || now.opened().hasErrors()) {
      return Reply.html("");
    }
    Withholder.Withheld withheld = now.withheld(readers.get());
    DeskWords words = bench.frame().words(request, DeskSection.AGREEMENTS);
    List<Map<String, Object>> lines = new ArrayList<>();
    for (Register.Withheld line : withheld.register().withheld()) {
      lines.add(
          Map.of(
              "thing",
              words.text("thing." + line.thing().kind().name(), line.thing().name()).strip(),
              "place",
              line.place().toString(),
              "file",
              line.place().file(),
              "line",
              line.place().line(),
              "column",
              line.place().column(),
              "under",
              List.copyOf(line.label().agreements())));
    }
    return bench
        .frame()
        .part(
            request,
            DeskSection.AGREEMENTS,
            "register.ftlh",
            Map.of("withheld", lines, "problems", problems(now, withheld, request.locale())));
  }
}
