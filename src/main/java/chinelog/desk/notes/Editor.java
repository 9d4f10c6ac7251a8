package chinelog.desk.notes;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.DeskWords;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.files.FileVersion;
import chinelog.desk.files.NoteText;
import chinelog.desk.files.TypedDraft;
import chinelog.desk.files.WriteOutcome;
import chinelog.desk.files.YamlText;
import chinelog.desk.seen.SeenPages;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.json.Json;
import chinelog.log.records.Entry;
import chinelog.log.records.NotePart;
import chinelog.log.records.Readers;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A note as text beside what its readers will see; any other text file of the log as text alone.
 * What is typed is kept as a draft until it is saved.
 */
public final class Editor implements DeskPage {

  private final Bench bench;
  private final SeenPages seen;
  private final KeysForm form;

  public Editor(Bench bench, SeenPages seen) {
    this.bench = bench;
    this.seen = seen;
    this.form = new KeysForm(bench);
  }

  @Override
  public void answerAt(Routes routes) {
    routes
        .get("/notes/edit", this::note)
        .get("/text", this::text)
        .get("/at", this::at)
        .post("/notes/look", this::look)
        .post("/notes/form", r -> form.part(r, sent(r)))
        .post("/notes/save", this::save)
        .post("/notes/draft", this::draft)
        .post("/notes/drop-draft", this::dropDraft)
        .post("/notes/remove", this::remove);
  }

  /** Whether a file could be read as a photograph, so that it has a page. */
  private boolean isInAlbum(String file) throws IOException {
    return bench.log().latest().opened().album().photographs().stream()
        .anyMatch(p -> p.file().path().equals(file));
  }

  /** Goes to the place of a problem. */
  private Reply at(WebRequest request) throws IOException {
    String file = request.text("file");
    return Reply.seeOther(
        file.startsWith("photos/") && !file.endsWith(".yaml")
            ? (isInAlbum(file) ? "/photographs/look?photo=" : "/photographs?photo=") + encoded(file)
            : NotesPages.editing(file)
                + "&line="
                + request.number("line", 0)
                + "&column="
                + request.number("column", 0)
                + carried(request, "found")
                + carried(request, "under"));
  }

  private static String carried(WebRequest request, String name) {
    StringBuilder fields = new StringBuilder();
    request.all(name).forEach(v -> fields.append("&" + name + "=" + encoded(v)));
    return fields.toString();
  }

  private static String encoded(String text) {
    return java.net.URLEncoder.encode(text, java.nio.charset.StandardCharsets.UTF_8);
  }

  private Reply note(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    Map<String, Object> values = values(request);
    FileVersion shown = shown(request);
    values.putAll(form.values(request, shown, now));
    values.put(
        "readers",
        now.log().readers().stream().map(r -> Map.of("id", r.id(), "title", r.title())).toList());
    return bench.frame().page(request, DeskSection.NOTES, "note.ftlh", values);
  }

  private Reply text(WebRequest request) throws IOException {
    return bench.frame().page(request, DeskSection.NOTES, "text.ftlh", values(request));
  }

  /** A file's text, or the draft of it that was left. */
  private FileVersion shown(WebRequest request) throws IOException {
    Path file = Path.of(request.text("file"));
    FileVersion version = bench.files().read(file);
    Optional<TypedDraft> draft = bench.files().findDraft(file);
    return draft.isPresent()
        ? new FileVersion(version.path(), draft.get().text(), draft.get().stampSeen(), true)
        : version;
  }

  private Map<String, Object> values(WebRequest request) throws IOException {
    FileVersion disk = bench.files().read(Path.of(request.text("file")));
    FileVersion shown = shown(request);
    Map<String, Object> values = new HashMap<>();
    values.put("file", disk.path());
    values.put("text", LineEnds.plain(shown.text()));
    values.put("stamp", shown.stamp());
    values.put("isDraft", !shown.text().equals(disk.text()));
    values.put("exists", disk.exists());
    values.put("line", request.number("line", 0));
    values.put("column", request.number("column", 0));
    return values;
  }

  /** What was sent as the text of a file. */
  private static FileVersion sent(WebRequest request) {
    return new FileVersion(
        request.text("file"), LineEnds.plain(request.text("text")), request.text("stamp"), true);
  }

  /** What readers would see of a text, the parts of it that bear marks, and what is wrong in it. */
  private Reply look(WebRequest request) throws IOException {
    FileVersion text = sent(request);
    SortedMap<String, String> unsaved = new TreeMap<>();
    unsaved.put(text.path(), text.text());
    Snapshot snapshot = bench.log().as(unsaved);
    Map<String, Object> reply = new LinkedHashMap<>();
    reply.put("problems", problems(snapshot, text.path(), request.locale()));
    reply.put("disk", bench.files().read(Path.of(text.path())).stamp());
    if (Entry.isNoteFile(text.path())) {
      reply.put("parts", NoteText.of(text).parts().stream().map(Editor::part).toList());
      reply.put("under", noteUnder(text));
      Optional<Readers> readers = snapshot.findReaders(request.text("for"));
      if (readers.isPresent()) {
        SeenPages.Note note = seen.note(snapshot, readers.get(), id(text.path()));
        reply.put("address", note.address());
        String page = note.page();
        if (page != null) {
          reply.put("page", page);
        }
      }
    }
    return Reply.json(Json.of(reply));
  }

  private static List<String> noteUnder(FileVersion text) {
    try {
      return YamlText.ofHead(text).words(List.of("under"));
    } catch (ProblemException e) {
      // What is wrong with the keys is told among the problems.
      return List.of();
    }
  }

  private static String id(String path) {
    return Entry.withoutEnding(path.replaceFirst("^entries/", ""));
  }

  private static List<Map<String, Object>> problems(Snapshot snapshot, String file, Locale locale) {
    List<Map<String, Object>> lines = new ArrayList<>();
    for (Problem problem : snapshot.problems()) {
      if (problem.place().file().equals(file)) {
        lines.add(
            Map.of(
                "line", problem.place().line(),
                "column", problem.place().column(),
                "what", problem.what().in(locale),
                "remedy", problem.remedy().in(locale),
                "error", problem.isError()));
      }
    }
    return lines;
  }

  private static Map<String, Object> part(NotePart part) {
    return Map.of(
        "kind", part.kind().name(),
        "level", part.level(),
        "from", part.from(),
        "to", part.to(),
        "under", part.agreements(),
        "marks", part.marks().stream().map(m -> List.of(m.from(), m.to())).toList());
  }

  private Reply save(WebRequest request) throws IOException {
    FileVersion text = sent(request);
    Path file = Path.of(text.path());
    FileVersion disk = bench.files().read(file);
    DeskWords words = bench.frame().words(request, DeskSection.NOTES);
    String whole = LineEnds.asIn(disk.text(), text.text());
    WriteOutcome outcome =
        bench.files().write(file, text.stamp(), whole, words.text("did.write", text.path()));
    if (outcome instanceof WriteOutcome.Written written) {
      bench.files().dropDraft(file);
      return Reply.json(Json.of(Map.of("stamp", written.now().stamp())));
    }
    if (outcome instanceof WriteOutcome.Changed changed) {
      return Reply.json(
          Json.of(
              Map.of(
                  "changed", LineEnds.plain(changed.onDisk().text()),
                  "stamp", changed.onDisk().stamp())));
    }
    Problem problem = ((WriteOutcome.Refused) outcome).problem();
    return Reply.json(Json.of(Map.of("refused", problem.words(words.locale()))));
  }

  private Reply draft(WebRequest request) {
    FileVersion text = sent(request);
    Optional<Problem> problem =
        bench.files().draft(Path.of(text.path()), text.stamp(), text.text());
    return Reply.json(
        problem.map(p -> Json.of(Map.of("refused", p.words(request.locale())))).orElse("{}"));
  }

  /** Takes a note away; it can be had back by undoing. */
  private Reply remove(WebRequest request) throws IOException {
    Path file = Path.of(request.text("file"));
    DeskWords words = bench.frame().words(request, DeskSection.NOTES);
    WriteOutcome outcome =
        bench
            .files()
            .remove(file, request.text("stamp"), words.text("did.remove", request.text("file")));
    if (outcome instanceof WriteOutcome.Written) {
      bench.files().dropDraft(file);
      return Reply.seeOther("/notes");
    }
    return Reply.seeOther(NotesPages.editing(request.text("file")));
  }

  private Reply dropDraft(WebRequest request) throws IOException {
    bench.files().dropDraft(Path.of(request.text("file")));
    return Reply.seeOther(NotesPages.editing(request.text("file")));
  }

  /** Agreements that something may be put under. */
  static List<Map<String, String>> agreements(Snapshot now) {
    return now.promises().stream()
        .map(a -> Map.of("id", a.id(), "with", a.with(), "covers", a.covers()))
        .toList();
  }
}
