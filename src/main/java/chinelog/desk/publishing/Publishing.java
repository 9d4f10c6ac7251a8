package chinelog.desk.publishing;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.Lines;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.log.records.Readers;
import chinelog.problem.Problem;
import chinelog.publish.Outcome;
import chinelog.publish.Publisher;
import chinelog.publish.Step;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Makes the editions, tells how far it has come and what came of it, and opens what stands. */
public final class Publishing implements DeskPage {

  private static final long PATIENCE_MILLIS = 10_000;

  private final Bench bench;
  private final StandingPage standing;
  private @Nullable Run latest;

  public Publishing(Bench bench) {
    this.bench = bench;
    this.standing = new StandingPage(bench);
  }

  @Override
  public void answerAt(Routes routes) {
    routes
        .get("/publishing", this::show)
        .post("/publishing/start", this::start)
        .get("/publishing/progress", this::progress)
        .get("/publishing/outcome", this::outcome)
        .get("/publishing/changes", standing::changes)
        .get("/published/", standing::file);
  }

  private Reply show(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    List<Map<String, Object>> readers = new ArrayList<>();
    for (Readers group : now.log().readers()) {
      readers.add(standing.line(group));
    }
    Map<String, Object> values = new HashMap<>();
    values.put("readers", readers);
    values.put("errors", (int) now.problems().stream().filter(Problem::isError).count());
    values.put("isRunning", isRunning());
    values.put("hasOutcome", outcome() != null);
    return bench.frame().page(request, DeskSection.PUBLISHING, "publishing.ftlh", values);
  }

  private synchronized boolean isRunning() {
    return latest != null && latest.outcome() == null;
  }

  private synchronized @Nullable Outcome outcome() {
    return latest == null ? null : latest.outcome();
  }

  private synchronized Reply start(WebRequest request) {
    if (!isRunning()) {
      List<String> wanted = request.all("for");
      latest =
          Run.begin(
              progress ->
                  new Publisher(
                          bench.folder(),
                          bench.today(),
                          bench.today(),
                          bench.clock().getZone(),
                          progress)
                      .publish(wanted));
    }
    return Reply.json("{}");
  }

  /** Server-sent events: {@code step} with its words, and {@code done}. */
  private Reply progress(WebRequest request) {
    Run run;
    synchronized (this) {
      run = latest;
    }
    Locale locale = bench.frame().words(request, DeskSection.PUBLISHING).locale();
    return new Reply(200, "text/event-stream", Map.of(), out -> tell(run, locale, out));
  }

  private static void tell(@Nullable Run run, Locale locale, OutputStream out) throws IOException {
    long known = 0;
    while (run != null && run.outcome() == null) {
      try {
        long now = run.await(known, PATIENCE_MILLIS);
        Step step = run.step();
        send(
            out,
            now == known || step == null ? ": still at it\n\n" : event("step", step.words(locale)));
        known = now;
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      }
    }
    send(out, event("done", ""));
  }

  private static String event(String name, String data) {
    return "event: " + name + "\ndata: " + data.replace('\n', ' ') + "\n\n";
  }

  private static void send(OutputStream out, String text) throws IOException {
    out.write(text.getBytes(StandardCharsets.UTF_8));
    out.flush();
  }

  private Reply outcome(WebRequest request) throws IOException {
    Outcome outcome = outcome();
    if (outcome == null) {
      return Reply.html("");
    }
    Locale locale = request.locale();
    Snapshot now = bench.log().now();
    Map<String, Object> values = new HashMap<>();
    values.put("errors", Lines.of(of(outcome, Problem.Severity.ERROR), locale, now));
    // Asked afresh, with the means to answer: some may have been answered since.
    values.put("isAsking", !of(outcome, Problem.Severity.QUESTION).isEmpty());
    values.put("reminders", Lines.of(outcome.remindersOfEditions(), locale, now));
    values.put("hasLeaks", outcome.hasLeaks());
    List<Map<String, Object>> editions = new ArrayList<>();
    for (Outcome.Made made : outcome.editions()) {
      Map<String, Object> edition = new HashMap<>(standing.files(made.readers()));
      edition.put("entries", made.entries());
      edition.put("plates", made.plates());
      edition.put("figures", made.figures());
      edition.put("withheld", made.withheld());
      edition.put("released", made.released());
      edition.put(
          "findings",
          made.findings().stream()
              .map(
                  f ->
                      Map.of(
                          "file",
                          f.file(),
                          "where",
                          f.where().in(locale),
                          "what",
                          f.what().in(locale)))
              .toList());
      editions.add(edition);
    }
    values.put("editions", editions);
    List<Map<String, Object>> unchanged = new ArrayList<>();
    for (Outcome.Unchanged edition : outcome.unchanged()) {
      unchanged.add(standing.files(edition.readers()));
    }
    values.put("unchanged", unchanged);
    return bench.frame().part(request, DeskSection.PUBLISHING, "outcome.ftlh", values);
  }

  private static List<Problem> of(Outcome outcome, Problem.Severity severity) {
    return outcome.problems().stream().filter(p -> p.severity() == severity).toList();
  }
}
