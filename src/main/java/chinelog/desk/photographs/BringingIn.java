package chinelog.desk.photographs;

import chinelog.desk.bench.Answers;
import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.DeskWords;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.files.YamlText;
import chinelog.desk.files.YamlValue;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.log.records.Head;
import chinelog.photo.Leftovers;
import chinelog.photo.gathering.Gatherer;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Photographs dropped onto the page or chosen: sent one by one into a private folder, and brought
 * in from there as {@code chinelog gather} does it.
 */
final class BringingIn implements DeskPage {

  private static final DeskSection HERE = DeskSection.PHOTOGRAPHS;

  /** The largest file that is taken: a card's worth of photographs in one zip. */
  private static final long MOST_BYTES = 16L << 30;

  private static final int CHUNK = 1 << 16;

  private static final String PRIVATE = "chinelog-bring-";

  private final Bench bench;

  /** Private folders by the name that the browser gave to a load. */
  private final Map<String, Path> loads = new ConcurrentHashMap<>();

  private volatile int done;
  private volatile int of;

  BringingIn(Bench bench) {
    this.bench = bench;
  }

  @Override
  public void answerAt(Routes routes) {
    routes
        .post("/photographs/load", this::load)
        .get("/photographs/load/progress", r -> Reply.json("[" + done + ", " + of + "]"))
        .post("/photographs/bring", this::bring);
  }

  /** One file: its name in the address, its bytes as they are. */
  private Reply load(WebRequest request) throws IOException {
    DeskWords words = bench.frame().words(request, HERE);
    String load = request.text("load");
    List<String> parts = parts(request.text("name"));
    if (!load.matches("[a-z0-9-]{8,64}") || parts.isEmpty()) {
      drop(load);
      return Answers.refused(words.text("bring.name"));
    }
    Path folder = loads.get(load);
    if (folder == null) {
      folder = Files.createTempDirectory(PRIVATE);
      loads.put(load, folder);
      clearOthers(folder);
    }
    Path file = folder;
    for (String part : parts) {
      file = file.resolve(part);
    }
    Files.createDirectories(file.getParent());
    try (InputStream in = request.body();
        OutputStream out = Files.newOutputStream(file, StandardOpenOption.CREATE_NEW)) {
      byte[] chunk = new byte[CHUNK];
      long bytes = 0;
      for (int n = in.read(chunk); n >= 0; n = in.read(chunk)) {
        bytes += n;
        if (bytes > MOST_BYTES) {
          throw new IOException("more than any card holds");
        }
        out.write(chunk, 0, n);
      }
    } catch (IOException e) {
      drop(load);
      return Answers.refused(words.text("bring.room"));
    }
    return Reply.html("");
  }

  /** Photographs lie about no longer than they must: a desk that was killed has left some. */
  private static void clearOthers(Path fresh) {
    try {
      Leftovers.clear(fresh, PRIVATE, "");
    } catch (IOException e) {
      // They may be somebody else's.
    }
  }

  /** A path of plain names: nothing that leads elsewhere or would be hidden. */
  private static List<String> parts(String name) {
    List<String> parts = new ArrayList<>();
    for (String part : name.split("/")) {
      String plain = part.replaceAll("[\\p{Cntrl}\\\\:*?\"<>|]", "_");
      if (plain.startsWith(".") || plain.isBlank() || plain.length() > 200) {
        return List.of();
      }
      parts.add(plain);
    }
    return parts;
  }

  /** Brings in what was sent, which is dropped again in any case: whoever tries again sends it. */
  private Reply bring(WebRequest request) throws IOException {
    String load = request.text("load");
    Path folder = loads.get(load);
    if (folder == null) {
      return Answers.refused(bench.frame().words(request, HERE).text("bring.nothing"));
    }
    try {
      return bring(request, folder);
    } finally {
      drop(load);
    }
  }

  private Reply bring(WebRequest request, Path folder) throws IOException {
    DeskWords words = bench.frame().words(request, HERE);
    Snapshot now = bench.log().now();
    Head head = now.log().head();
    Gatherer.ClockPhoto clock = null;
    if (!request.text("clock").isEmpty()) {
      try {
        clock =
            new Gatherer.ClockPhoto(
                request.text("clock"),
                LocalDateTime.parse(request.text("shows").strip().replace(' ', 'T')));
      } catch (DateTimeParseException e) {
        return Answers.refused(words.text("bring.time", request.text("shows")));
      }
    }
    List<Gatherer.Outcome> outcomes = new ArrayList<>();
    List<Problem> unread = new ArrayList<>();
    SortedMap<String, Duration> clocks = new TreeMap<>(head.clocks());
    try {
      List<Path> sources = sources(folder);
      for (Path from : sources) {
        boolean isClocks = clock != null && (from.equals(folder) || sources.size() == 1);
        Gatherer.Outcome outcome;
        try {
          outcome = gather(from, head, clocks, isClocks ? clock : null);
        } catch (ProblemException e) {
          if (from.equals(folder)) {
            throw e;
          }
          // The other photographs are brought in all the same.
          unread.add(unread(from, e.problem()));
          Files.delete(from);
          continue;
        }
        if (!from.equals(folder)) {
          // What lies beside it is brought in next, and this has been.
          Files.delete(from);
        }
        outcomes.add(outcome);
        clocks.putAll(outcome.clocks());
        if (outcome.problems().stream().anyMatch(Problem::isError)) {
          return told(request, outcomes, unread, false);
        }
      }
    } catch (ProblemException e) {
      return Answers.refused(e.problem().words(request.locale()));
    }
    rememberClocks(words, head, clocks);
    return told(request, outcomes, unread, true);
  }

  /** The folder itself and every zip in it; the folder last, if anything else lies there. */
  private static List<Path> sources(Path folder) throws IOException {
    List<Path> zips = new ArrayList<>();
    boolean others = false;
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(Files::isRegularFile).sorted().toList()) {
        if (file.toString().toLowerCase(Locale.ROOT).endsWith(".zip")) {
          zips.add(file);
        } else {
          others = true;
        }
      }
    }
    if (others || zips.isEmpty()) {
      zips.add(folder);
    }
    return zips;
  }

  /** Writes into log.yaml how fast a clock is that was just found out. */
  private void rememberClocks(DeskWords words, Head head, SortedMap<String, Duration> clocks) {
    if (!Files.exists(bench.folder().resolve("log.yaml"))) {
      return;
    }
    clocks.forEach(
        (camera, fast) -> {
          if (!fast.equals(head.clocks().getOrDefault(camera, Duration.ZERO))) {
            bench
                .files()
                .edit(
                    Path.of("log.yaml"),
                    yaml ->
                        YamlText.of(yaml)
                            .with(List.of("clocks", camera), YamlValue.text(Gatherer.amount(fast)))
                            .text(),
                    words.text("done.clock", camera));
          }
        });
  }

  private Gatherer.Outcome gather(
      Path from, Head head, SortedMap<String, Duration> clocks, Gatherer.@Nullable ClockPhoto clock)
      throws IOException {
    return Gatherer.gather(
        new Gatherer.Request(
            from, bench.folder(), head.zone(), clocks, clock, bench.today(), false),
        (n, all) -> {
          done = n;
          of = all;
        });
  }

  /** What is wrong with a zip that was sent, by the name it had. */
  private static Problem unread(Path zip, Problem problem) {
    return Problem.error(
        Place.of(zip.getFileName().toString()),
        problem.what(),
        "Unpack it where it is, and choose the folder that comes of it.");
  }

  private Reply told(
      WebRequest request, List<Gatherer.Outcome> outcomes, List<Problem> unread, boolean all)
      throws IOException {
    List<Problem> problems = new ArrayList<>(unread);
    outcomes.forEach(o -> problems.addAll(o.problems()));
    return bench
        .frame()
        .part(
            request,
            HERE,
            "photographs-brought.ftlh",
            Map.of(
                "brought", count(outcomes, Gatherer.Fate.BROUGHT_IN),
                "there", count(outcomes, Gatherer.Fate.ALREADY_THERE),
                "passed", count(outcomes, Gatherer.Fate.PASSED_OVER),
                "all", all,
                "problems",
                    problems.stream()
                        .filter(p -> !p.place().file().contains(PRIVATE))
                        .map(
                            p ->
                                Map.of(
                                    "what",
                                    p.what().in(request.locale()),
                                    "remedy",
                                    p.remedy().in(request.locale()),
                                    "place",
                                    p.place().toString()))
                        .toList()));
  }

  private static int count(List<Gatherer.Outcome> outcomes, Gatherer.Fate fate) {
    return (int) outcomes.stream().mapToLong(o -> o.count(fate)).sum();
  }

  private void drop(String load) throws IOException {
    @Nullable Path folder = loads.remove(load);
    if (folder != null) {
      Leftovers.delete(folder);
    }
  }
}
