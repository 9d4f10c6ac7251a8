package chinelog.desk.notes;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.log.text.Inline;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import chinelog.quantity.NumberStyle;
import chinelog.reckon.Fact;
import chinelog.reckon.Facts;
import chinelog.wording.Catalogue;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Lists to choose from while a note is written: facts with their values, and photographs. */
public final class Chooser implements DeskPage {

  private static final int MOST = 60;

  private final Bench bench;
  private final Darkroom darkroom;

  public Chooser(Bench bench) {
    this.bench = bench;
    this.darkroom = new Darkroom(bench.folder());
  }

  @Override
  public void answerAt(Routes routes) {
    routes
        .get("/notes/facts", this::facts)
        .get("/notes/photographs", this::photographs)
        .get("/notes/picture", this::picture);
  }

  private Reply facts(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    Locale locale = bench.frame().words(request, DeskSection.NOTES).locale();
    Catalogue titles = Catalogue.of(Facts.MESSAGES, locale);
    NumberStyle style = new NumberStyle(locale, 0);
    String sought = request.text("q").toLowerCase(locale).strip();
    List<Map<String, Object>> lines = new ArrayList<>();
    for (Fact fact : now.opened().facts().inOrder()) {
      String title = titles.text(fact.title());
      if (lines.size() < MOST
          && (fact.name().toLowerCase(locale).contains(sought)
              || title.toLowerCase(locale).contains(sought))) {
        lines.add(
            Map.of(
                "name", fact.name(),
                "title", title,
                "value", style.show(fact.value()),
                "under", List.copyOf(fact.label().agreements())));
      }
    }
    return bench
        .frame()
        .part(request, DeskSection.NOTES, "choose-fact.ftlh", Map.of("facts", lines));
  }

  /** Those of the note's day first, then the youngest. */
  private Reply photographs(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    String day = request.text("day");
    String sought = request.text("q").toLowerCase(Locale.ROOT).strip();
    List<Map<String, Object>> lines =
        now.opened().album().photographs().stream()
            .filter(p -> !p.file().leaveOut())
            .filter(p -> words(p).toLowerCase(Locale.ROOT).contains(sought))
            .sorted(
                Comparator.comparing((Photograph p) -> !day(p).equals(day))
                    .thenComparing(Chooser::day, Comparator.reverseOrder()))
            .limit(MOST)
            .map(Chooser::line)
            .toList();
    return bench
        .frame()
        .part(request, DeskSection.NOTES, "choose-photograph.ftlh", Map.of("photographs", lines));
  }

  private static Map<String, Object> line(Photograph photograph) {
    return Map.of(
        "path", photograph.file().path(),
        "day", day(photograph),
        "caption", Inline.plainText(photograph.file().caption()),
        "alt", photograph.file().alt(),
        "placed", photograph.entry() != null);
  }

  private static String words(Photograph photograph) {
    return photograph.file().path()
        + " "
        + Inline.plainText(photograph.file().caption())
        + " "
        + photograph.file().alt();
  }

  private static String day(Photograph photograph) {
    var taken = photograph.taken();
    LocalDate day = taken == null ? null : taken.toLocalDate();
    return day == null ? "" : day.toString();
  }

  /** A photograph small, nothing hidden in it: it is the maker's own. */
  private Reply picture(WebRequest request) throws IOException {
    String path = request.text("photograph");
    Optional<Photograph> found =
        bench.log().latest().opened().album().photographs().stream()
            .filter(p -> p.file().path().equals(path))
            .findFirst();
    if (found.isEmpty()) {
      return Reply.notFound();
    }
    Path file = darkroom.print(found.get(), List.of()).prints().get(0).jpeg();
    return Reply.file("image/jpeg", file);
  }
}
