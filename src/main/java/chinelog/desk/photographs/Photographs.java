package chinelog.desk.photographs;

import chinelog.desk.bench.Answers;
import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.DeskWords;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.files.NoteText;
import chinelog.desk.files.WriteOutcome;
import chinelog.desk.files.YamlValue;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.log.records.Entry;
import chinelog.log.records.PhotoFile;
import chinelog.photo.PhotoProgress;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.likeness.Burst;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The sheet of contacts: all photographs by day, those that belong to no note first; and what is
 * done to one or many of them.
 */
public final class Photographs implements DeskPage {

  private static final DeskSection HERE = DeskSection.PHOTOGRAPHS;

  private final Bench bench;
  private final Remarks remarks;
  private final Darkroom darkroom;
  private long burstsOf = -1;
  private List<List<String>> bursts = List.of();

  public Photographs(Bench bench) {
    this.bench = bench;
    this.remarks = new Remarks(bench.files());
    this.darkroom = new Darkroom(bench.folder());
  }

  @Override
  public void answerAt(Routes routes) {
    routes
        .get("/photographs", this::show)
        .get("/photographs/print", this::print)
        .get("/photographs/bursts", this::bursts)
        .get("/photographs/words", this::wordsInARow)
        .post("/photographs/words", this::word)
        .post("/photographs/leave-out", this::leaveOut)
        .post("/photographs/under", this::under)
        .post("/photographs/note", this::giveToNote);
    new Looking(bench, remarks, darkroom).answerAt(routes);
    new BringingIn(bench).answerAt(routes);
  }

  /** A day, or what has none. */
  public record Group(String id, String title, List<Shown.Photo> photos) {}

  /** A note that a photograph may be given to. */
  public record Note(String id, String title, String day) {}

  private Reply show(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    DeskWords words = bench.frame().words(request, HERE);
    String only = request.text("only");
    Map<String, List<Shown.Photo>> groups = new LinkedHashMap<>();
    groups.put("unplaced", new ArrayList<>());
    for (Shown.Photo photo : Shown.all(now)) {
      if (isWanted(photo, only)) {
        String group =
            photo.unplaced() ? "unplaced" : photo.day().isEmpty() ? "undated" : photo.day();
        groups.computeIfAbsent(group, g -> new ArrayList<>()).add(photo);
      }
    }
    List<Group> shown = new ArrayList<>();
    groups.forEach(
        (id, photos) -> {
          if (!photos.isEmpty()) {
            String title =
                id.matches("[0-9-]+")
                    ? words.date(java.time.LocalDate.parse(id))
                    : words.text("group." + id);
            shown.add(new Group(id, title, photos));
          }
        });
    Map<String, Object> values = new TreeMap<>();
    values.put("groups", shown);
    values.put("only", only);
    values.put("total", now.opened().album().photographs().size());
    values.put("notes", notes(now));
    values.put("agreements", now.agreements());
    return bench.frame().page(request, HERE, "photographs.ftlh", values);
  }

  private static boolean isWanted(Shown.Photo photo, String only) {
    return switch (only) {
      case "unplaced" -> photo.unplaced();
      case "wordless" -> photo.alt().isEmpty() && !photo.leftOut();
      case "under" -> !photo.under().isEmpty() || photo.regions() > 0;
      case "left-out" -> photo.leftOut();
      default -> true;
    };
  }

  private static List<Note> notes(Snapshot now) {
    List<Note> notes = new ArrayList<>();
    for (Entry entry : now.log().notes()) {
      if (!entry.id().contains("#")) {
        notes.add(0, new Note(entry.id(), entry.title().value(), entry.date().toString()));
      }
    }
    return notes;
  }

  /** A derivative out of the private cache, of at least the width asked for where there is one. */
  private Reply print(WebRequest request) throws IOException {
    Optional<Photograph> photo = Shown.find(bench.log().latest(), request.text("photo"));
    if (photo.isEmpty()) {
      return Reply.notFound();
    }
    int edge = request.number("edge", Darkroom.LONG_EDGES_PX.get(0));
    Darkroom.Print chosen = null;
    for (Darkroom.Print print : darkroom.print(photo.get(), List.of()).prints()) {
      if (chosen == null || Math.max(chosen.widthPx(), chosen.heightPx()) < edge) {
        chosen = print;
      }
    }
    return chosen == null ? Reply.notFound() : Reply.file("image/jpeg", chosen.jpeg());
  }

  /** Paths of each burst, a line each, the sharpest first. */
  private synchronized Reply bursts(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    if (burstsOf != now.version()) {
      List<List<String>> found = new ArrayList<>();
      for (Burst burst : Burst.find(now.opened().album(), darkroom, PhotoProgress.SILENT)) {
        List<String> paths = new ArrayList<>();
        paths.add(burst.sharpest().file().path());
        burst.photographs().forEach(p -> paths.add(p.file().path()));
        found.add(paths);
      }
      bursts = found;
      burstsOf = now.version();
    }
    List<String> lines = new ArrayList<>();
    bursts.forEach(b -> lines.add(String.join("\t", b)));
    return Reply.bytes(
        "text/plain; charset=utf-8",
        String.join("\n", lines).getBytes(java.nio.charset.StandardCharsets.UTF_8));
  }

  private Reply wordsInARow(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    String only = request.find("only").orElse("wordless");
    Map<String, Object> values = new TreeMap<>();
    values.put("photos", Shown.all(now).stream().filter(p -> isWanted(p, only)).toList());
    values.put("only", only);
    return bench.frame().page(request, HERE, "photograph-words.ftlh", values);
  }

  private Reply word(WebRequest request) throws IOException {
    String key = request.text("key");
    String text = request.text("text").replaceAll("\\s+", " ").strip();
    if (!List.of("alt", "caption").contains(key)) {
      return Reply.notFound();
    }
    return changed(
        request,
        (yaml, at, photo) ->
            text.isEmpty()
                ? yaml.without(List.of(at, key))
                : yaml.with(List.of(at, key), YamlValue.text(text)),
        "done.word." + key);
  }

  private Reply leaveOut(WebRequest request) throws IOException {
    boolean out = request.text("out").equals("true");
    return changed(
        request,
        (yaml, at, photo) ->
            out
                ? yaml.with(List.of(at, "leave-out"), YamlValue.bare("true"))
                : yaml.without(List.of(at, "leave-out")),
        out ? "done.left-out" : "done.taken-back");
  }

  private Reply under(WebRequest request) throws IOException {
    List<String> agreements = request.all("under").stream().filter(a -> !a.isEmpty()).toList();
    return changed(
        request,
        (yaml, at, photo) ->
            agreements.isEmpty()
                ? yaml.without(List.of(at, "under"))
                : yaml.with(List.of(at, "under"), YamlValue.under(agreements)),
        agreements.isEmpty() ? "done.free" : "done.under");
  }

  private Reply changed(WebRequest request, Remarks.Change change, String done) throws IOException {
    DeskWords words = bench.frame().words(request, HERE);
    List<PhotoFile> photos = photos(request);
    if (photos.isEmpty()) {
      return Answers.refused(words.text("none.chosen"));
    }
    String said = words.count(done, photos.size());
    return Answers.of(remarks.change(photos, change, said), words, said);
  }

  /** Those chosen; the log need not be read afresh for photographs that are known already. */
  private List<PhotoFile> photos(WebRequest request) throws IOException {
    List<PhotoFile> known = photos(request, bench.log().latest());
    return known.size() == request.all("photo").size() ? known : photos(request, bench.log().now());
  }

  private static List<PhotoFile> photos(WebRequest request, Snapshot snapshot) {
    List<PhotoFile> photos = new ArrayList<>();
    for (String path : request.all("photo")) {
      Shown.find(snapshot, path).ifPresent(p -> photos.add(p.file()));
    }
    return photos;
  }

  /** Writes pictures at the end of a note that does not show them yet. */
  private Reply giveToNote(WebRequest request) throws IOException {
    DeskWords words = bench.frame().words(request, HERE);
    Snapshot now = bench.log().now();
    Entry entry = Shown.entries(now).get(request.text("note"));
    List<PhotoFile> photos = photos(request);
    if (entry == null || photos.isEmpty()) {
      return Answers.refused(words.text("none.chosen"));
    }
    List<String> shown = entry.images().stream().map(i -> i.path()).toList();
    String said = words.text("done.note", entry.title().value());
    WriteOutcome outcome =
        bench
            .files()
            .edit(
                Path.of(entry.place().file()),
                note -> {
                  NoteText text = NoteText.of(note);
                  for (PhotoFile photo : photos) {
                    if (!shown.contains(photo.path())) {
                      text = text.withPicture(text.text().length(), photo.path(), "");
                    }
                  }
                  return text.text();
                },
                said);
    return Answers.of(outcome, words, said);
  }
}
