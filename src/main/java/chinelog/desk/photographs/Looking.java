package chinelog.desk.photographs;

import chinelog.desk.bench.Answers;
import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.DeskWords;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.files.WriteOutcome;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.log.records.Entry;
import chinelog.log.records.PhotoFile;
import chinelog.photo.PhotoProgress;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.likeness.Likeness;
import chinelog.photo.pixels.Box;
import java.io.IOException;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** One photograph seen large, with the regions of it that are under agreements. */
record Looking(Bench bench, Remarks remarks, Darkroom darkroom) implements DeskPage {

  private static final DeskSection HERE = DeskSection.PHOTOGRAPHS;

  /** Look-alikes are sought among those taken within a day of it, the nearest first. */
  private static final Duration NEAR = Duration.ofHours(24);

  private static final int MOST_COMPARED = 200;
  private static final int MOST_ALIKE = 12;

  @Override
  public void answerAt(Routes routes) {
    routes
        .get("/photographs/look", this::show)
        .get("/photographs/filled", this::filled)
        .get("/photographs/alike", this::alike)
        .post("/photographs/regions", this::regions)
        .post("/photographs/same", this::same);
  }

  /**
   * @param box its sides as parts of the picture's, joined by commas
   */
  public record Region(String box, String under) {}

  private Reply show(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    List<Photograph> all = now.opened().album().photographs();
    Optional<Photograph> found = Shown.find(now, request.text("photo"));
    if (found.isEmpty()) {
      return Reply.notFound();
    }
    Photograph photo = found.get();
    int at = all.indexOf(photo);
    Map<String, Entry> entries = Shown.entries(now);
    String pinned = photo.file().pinnedSha256();
    Map<String, Object> values = new TreeMap<>();
    values.put("photo", Shown.of(photo, entries));
    values.put("regions", photo.file().regions().stream().map(Looking::shown).toList());
    values.put("stale", !photo.file().regions().isEmpty() && !photo.sha256().equals(pinned));
    values.put("before", at > 0 ? all.get(at - 1).file().path() : "");
    values.put("after", at < all.size() - 1 ? all.get(at + 1).file().path() : "");
    values.put("agreements", now.agreements());
    return bench.frame().page(request, HERE, "photograph.ftlh", values);
  }

  private static Region shown(PhotoFile.Region region) {
    Drawn drawn = Drawn.of(region, 0);
    return new Region(
        String.join(",", drawn.box().stream().map(s -> s.toPlainString()).toList()),
        String.join(",", drawn.under()));
  }

  /** What will be filled, in pixels of the upright picture: one line for each rectangle. */
  private Reply filled(WebRequest request) throws IOException {
    Optional<Photograph> photo = Shown.find(bench.log().now(), request.text("photo"));
    List<Drawn> drawn = photo.isEmpty() ? null : drawn(request, photo.get().file());
    if (photo.isEmpty() || drawn == null) {
      return Reply.notFound();
    }
    StringBuilder boxes = new StringBuilder("[");
    for (Box box : Darkroom.filled(photo.get(), drawn.stream().map(Drawn::region).toList())) {
      boxes
          .append(boxes.length() == 1 ? "" : ", ")
          .append(List.of(box.left(), box.top(), box.right(), box.bottom()));
    }
    return Reply.json(boxes.append("]").toString());
  }

  private static @Nullable List<Drawn> drawn(WebRequest request, PhotoFile photo) {
    List<Drawn> drawn = new ArrayList<>();
    for (String sent : request.all("region")) {
      Optional<Drawn> region = Drawn.parse(sent, photo.regions());
      if (region.isEmpty()) {
        return null;
      }
      drawn.add(region.get());
    }
    return drawn;
  }

  /** Keeps the regions of a photograph, if it is still the file that they were drawn on. */
  private Reply regions(WebRequest request) throws IOException {
    DeskWords words = bench.frame().words(request, HERE);
    Snapshot now = bench.log().now();
    Optional<Photograph> found = Shown.find(now, request.text("photo"));
    List<Drawn> drawn = found.isEmpty() ? null : drawn(request, found.get().file());
    if (found.isEmpty() || drawn == null) {
      return Answers.refused(words.text("region.wrong"));
    }
    Photograph photo = found.get();
    if (!photo.sha256().equals(request.text("sha256"))) {
      return Answers.refused(words.text("region.other-picture"));
    }
    if (!drawn.stream().allMatch(d -> now.log().agreements().keySet().containsAll(d.under()))) {
      return Answers.refused(words.text("region.no-agreement"));
    }
    String said = words.count("done.regions", drawn.size());
    WriteOutcome outcome =
        remarks.change(
            List.of(photo.file()),
            (yaml, key, file) -> Drawn.write(yaml, key, drawn, photo.sha256()),
            said);
    return Answers.of(outcome, words, said);
  }

  /** Puts the regions of one photograph on others, besides those that they have. */
  private Reply same(WebRequest request) throws IOException {
    DeskWords words = bench.frame().words(request, HERE);
    Snapshot now = bench.log().now();
    Optional<Photograph> from = Shown.find(now, request.text("photo"));
    List<Photograph> to = new ArrayList<>();
    request.all("to").forEach(path -> Shown.find(now, path).ifPresent(to::add));
    if (from.isEmpty() || from.get().file().regions().isEmpty() || to.isEmpty()) {
      return Answers.refused(words.text("none.chosen"));
    }
    List<Drawn> regions = drawn(from.get().file()).stream().map(Drawn::asNew).toList();
    for (Photograph photo : to) {
      String pinned = photo.file().pinnedSha256();
      if (!photo.file().regions().isEmpty() && !photo.sha256().equals(pinned)) {
        return Answers.refused(words.text("region.stale-there", photo.file().path()));
      }
    }
    String said = words.count("done.same", to.size());
    WriteOutcome outcome =
        remarks.change(
            to.stream().map(Photograph::file).toList(),
            (yaml, key, file) -> {
              List<Drawn> all = new ArrayList<>(drawn(file));
              regions.stream().filter(r -> all.stream().noneMatch(r::isSame)).forEach(all::add);
              String sha256 =
                  to.stream().filter(p -> p.file().equals(file)).findFirst().orElseThrow().sha256();
              return Drawn.write(yaml, key, all, sha256);
            },
            said);
    return Answers.of(outcome, words, said);
  }

  private static List<Drawn> drawn(PhotoFile file) {
    List<Drawn> drawn = new ArrayList<>();
    for (int i = 0; i < file.regions().size(); i++) {
      drawn.add(Drawn.of(file.regions().get(i), i));
    }
    return drawn;
  }

  /** Photographs that look like one. */
  private Reply alike(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    Optional<Photograph> found = Shown.find(now, request.text("photo"));
    if (found.isEmpty()) {
      return Reply.notFound();
    }
    Photograph photo = found.get();
    List<Photograph> near =
        now.opened().album().photographs().stream()
            .filter(p -> p != photo && p.link() != Photograph.Link.LEFT_OUT)
            .filter(p -> apart(photo, p).compareTo(NEAR) <= 0)
            .sorted((a, b) -> apart(photo, a).compareTo(apart(photo, b)))
            .limit(MOST_COMPARED)
            .toList();
    Map<String, Entry> entries = Shown.entries(now);
    List<Shown.Photo> alike =
        Likeness.alike(photo, near, darkroom, PhotoProgress.SILENT).stream()
            .limit(MOST_ALIKE)
            .map(p -> Shown.of(p, entries))
            .toList();
    return bench
        .frame()
        .part(
            request,
            HERE,
            "photographs-alike.ftlh",
            Map.of("photos", alike, "photo", photo.file().path()));
  }

  private static Duration apart(Photograph a, Photograph b) {
    LocalDateTime one = a.taken();
    LocalDateTime other = b.taken();
    return one == null || other == null ? NEAR : Duration.between(one, other).abs();
  }
}
