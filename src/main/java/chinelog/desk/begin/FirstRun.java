package chinelog.desk.begin;

import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.DeskWords;
import chinelog.desk.bench.Frame;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.photo.PhotoProgress;
import chinelog.photo.gathering.Gatherer;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * Asks what is built, at what scale and where its photographs are, and opens the log so made.
 *
 * @param suggested where the log may lie
 */
public record FirstRun(Frame frame, Clock clock, Path suggested, Opening opening)
    implements DeskPage {

  /** Opens a log at this desk. */
  public interface Opening {
    void open(Path folder) throws IOException;
  }

  @Override
  public void answerAt(Routes routes) {
    routes
        .get("/", r -> show(r, ""))
        .get("/begin/places", this::places)
        .post("/begin", this::begin)
        .post("/open", this::open);
  }

  /** Folders that may be meant, to be chosen instead of typed. */
  private Reply places(WebRequest request) throws IOException {
    LikelyPlaces places = LikelyPlaces.of(Path.of(System.getProperty("user.home", "")), suggested);
    return frame.part(
        request,
        DeskSection.TODAY,
        "first-places.ftlh",
        Map.of("photographs", places.photographs(), "logs", places.logs()));
  }

  private Reply show(WebRequest request, String wrong) throws IOException {
    Map<String, Object> values = new HashMap<>();
    values.put("folder", request.find("folder").orElse(suggested.toString()));
    for (String field : new String[] {"subject", "kind", "scale", "photographs", "note"}) {
      values.put(field, request.text(field));
    }
    values.put("suggested", suggested.toString());
    values.put("wrong", wrong);
    return frame.page(request, DeskSection.TODAY, "first-run.ftlh", values);
  }

  private Reply begin(WebRequest request) throws IOException {
    DeskWords words = frame.words(request, DeskSection.TODAY);
    String subject = request.text("subject").strip();
    if (subject.isEmpty()) {
      return show(request, words.text("first.no-subject"));
    }
    try {
      Path folder = path(request.text("folder"));
      String from = request.text("photographs").strip();
      Path photographs = from.isEmpty() ? null : path(from);
      if (photographs != null && !Files.exists(photographs)) {
        throw new ProblemException(
            Problem.error(
                Place.of(from),
                Sentence.of("There is no such folder or zip: {0}.", from),
                "Correct it, or leave it empty and bring photographs in later."));
      }
      Locale language = words.locale();
      new FirstLog(
              subject,
              request.text("kind"),
              scale(request.text("scale").strip()),
              language,
              clock.getZone(),
              request.text("note"))
          .layDown(
              folder, words.text("first.title", subject), words.text("first.heading"), today());
      if (photographs != null) {
        Gatherer.gather(
            new Gatherer.Request(
                photographs, folder, clock.getZone(), new TreeMap<>(), null, today(), false),
            PhotoProgress.SILENT);
      }
      opening.open(folder);
    } catch (ProblemException e) {
      return show(request, e.problem().words(request.locale()));
    }
    return Reply.seeOther("/");
  }

  private Reply open(WebRequest request) throws IOException {
    try {
      String named = request.find("log").orElse(request.text("typed")).strip();
      Path folder = path(named);
      if (named.isEmpty() || !Files.isDirectory(folder)) {
        return show(request, frame.words(request, DeskSection.TODAY).text("first.no-log"));
      }
      opening.open(folder);
    } catch (ProblemException e) {
      return show(request, e.problem().words(request.locale()));
    }
    return Reply.seeOther("/");
  }

  private LocalDate today() {
    return LocalDate.ofInstant(clock.instant(), clock.getZone());
  }

  /** "16" is 1:16. */
  private static String scale(String written) {
    return written.matches("[0-9]+([.][0-9]+)?") ? "1:" + written : written;
  }

  private static Path path(String text) throws ProblemException {
    String home = System.getProperty("user.home", "");
    String whole = text.strip().replaceFirst("^~(?=/|$)", home.replace("\\", "\\\\"));
    try {
      return Path.of(whole).toAbsolutePath().normalize();
    } catch (InvalidPathException e) {
      throw new ProblemException(
          Problem.error(
              Place.of(text),
              Sentence.of("\u201c{0}\u201d cannot be the name of a folder on this computer.", text),
              "Choose another."),
          e);
    }
  }
}
