package chinelog.desk.notes;

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
import chinelog.log.records.Entry;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A clock that is started when work begins; when it is stopped, the time goes into a note's {@code
 * time}. It runs on over a restart.
 */
public final class BenchClock implements DeskPage {

  private static final DateTimeFormatter MINUTES =
      DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final List<String> TIME = List.of("time");

  private final Bench bench;
  private final Path file;

  public BenchClock(Bench bench) {
    this.bench = bench;
    this.file = bench.folder().resolve(".chinelog").resolve("desk").resolve("clock");
  }

  @Override
  public void answerAt(Routes routes) {
    routes
        .get("/clock", this::show)
        .post("/clock/start", this::start)
        .post("/clock/stop", this::stop)
        .post("/clock/drop", this::drop);
  }

  private Optional<ZonedDateTime> since() throws IOException {
    if (!Files.isRegularFile(file)) {
      return Optional.empty();
    }
    try {
      ZoneId zone = bench.log().now().log().head().zone();
      return Optional.of(Instant.parse(Files.readString(file).strip()).atZone(zone));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  private Reply show(WebRequest request) throws IOException {
    Map<String, Object> values = new HashMap<>();
    Optional<ZonedDateTime> since = since();
    List<Map<String, String>> notes = new ArrayList<>();
    if (since.isPresent()) {
      values.put("since", MINUTES.format(since.get()));
      values.put("millis", String.valueOf(since.get().toInstant().toEpochMilli()));
      for (Entry entry : bench.log().now().log().entries()) {
        if (entry.date().equals(since.get().toLocalDate())) {
          notes.add(Map.of("file", entry.place().file(), "title", entry.title().value()));
        }
      }
    }
    values.put("notes", notes);
    return bench.frame().part(request, DeskSection.TODAY, "clock.ftlh", values);
  }

  private Reply start(WebRequest request) throws IOException {
    if (since().isEmpty()) {
      Files.createDirectories(file.getParent());
      Files.writeString(file, bench.clock().instant().toString());
    }
    return show(request);
  }

  private Reply drop(WebRequest request) throws IOException {
    Files.deleteIfExists(file);
    return show(request);
  }

  /** Adds the time to the note that was chosen, or begins one with it. */
  private Reply stop(WebRequest request) throws IOException {
    Optional<ZonedDateTime> since = since();
    if (since.isEmpty()) {
      return Reply.seeOther("/");
    }
    ZonedDateTime from = since.get();
    ZonedDateTime ended = bench.clock().instant().atZone(from.getZone());
    if (Duration.between(from, ended).compareTo(Duration.ofDays(1)) >= 0) {
      throw new ProblemException(
          Problem.error(
              Place.of("entries"),
              "The clock has run for a day or more, which the time of a note cannot say.",
              "Throw it away, and write into the note when you were at work."));
    }
    // What took less than a minute took one.
    ZonedDateTime to =
        MINUTES.format(ended).equals(MINUTES.format(from)) ? from.plusMinutes(1) : ended;
    String time = MINUTES.format(from) + "-" + MINUTES.format(to);
    DeskWords words = bench.frame().words(request, DeskSection.TODAY);
    String note = request.text("note");
    LocalDate day = from.toLocalDate();
    String name =
        note.isEmpty()
            ? FileNames.of(
                day, words.text("clock.note"), taken -> Files.exists(bench.folder().resolve(taken)))
            : note;
    WriteOutcome outcome =
        bench
            .files()
            .edit(
                Path.of(name),
                now -> withTime(now, time, words.text("clock.note")),
                words.text("did.clock", time));
    if (outcome instanceof WriteOutcome.Refused refused) {
      throw new ProblemException(refused.problem());
    }
    Files.deleteIfExists(file);
    return Reply.seeOther(NotesPages.editing(name));
  }

  private static String withTime(FileVersion note, String time, String title)
      throws ProblemException {
    FileVersion text =
        note.exists() ? note : new FileVersion(note.path(), "# " + title + "\n\n", "", true);
    YamlText keys = YamlText.ofHead(text);
    List<String> before = keys.words(TIME);
    List<String> all = new ArrayList<>(before);
    all.add(time);
    return keys.with(TIME, YamlValue.text(String.join(", ", all))).text();
  }
}
