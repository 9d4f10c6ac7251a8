package chinelog.desk;

import chinelog.publish.Demo;
import chinelog.publish.PublishBenchmark;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * How long a maker waits at the desk: {@code DeskBenchmark LOG}, measured on a copy of it, or
 * {@code DeskBenchmark EMPTY_FOLDER 2000 300}, on a log of so many photographs and notes. Each line
 * gives the middle of several goes, by the wall clock and in CPU, and what it should keep to.
 */
public final class DeskBenchmark {

  private static final int GOES = 9;

  private final Path log;
  private final HttpClient client = HttpClient.newHttpClient();
  private @Nullable Desk desk;
  private String origin = "";
  private String cookie = "";

  private DeskBenchmark(Path log) {
    this.log = log;
  }

  /** Something a maker waits for. */
  private interface Doing {
    void once(int go) throws IOException, InterruptedException;
  }

  public static void main(String[] args) throws IOException, InterruptedException {
    if (args.length > 1) {
      Path log = Path.of(args[0]);
      if (Files.notExists(log.resolve("log.yaml"))) {
        PublishBenchmark.write(
            log, Integer.parseInt(args[1]), Integer.parseInt(args[2]), "site", 1200);
      }
      new DeskBenchmark(log.toRealPath()).measure();
      return;
    }
    Path copy = Files.createTempDirectory("chinelog-desk-benchmark").resolve("log");
    Demo.copy(Path.of(args[0]), copy, Set.of(".chinelog"));
    try {
      new DeskBenchmark(copy.toRealPath()).measure();
    } finally {
      OpenDemo.delete(copy.getParent());
    }
  }

  private void measure() throws IOException, InterruptedException {
    try {
      run();
    } finally {
      if (desk != null) {
        desk.close();
      }
    }
  }

  private static double cpuMillis() {
    return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
            .getProcessCpuTime()
        / 1e6;
  }

  private static void time(String what, int goes, Doing doing)
      throws IOException, InterruptedException {
    List<Double> walls = new ArrayList<>();
    List<Double> cpus = new ArrayList<>();
    for (int go = 0; go < goes; go++) {
      double cpu = cpuMillis();
      long wall = System.nanoTime();
      doing.once(go);
      walls.add((System.nanoTime() - wall) / 1e6);
      cpus.add(cpuMillis() - cpu);
    }
    Collections.sort(walls);
    Collections.sort(cpus);
    System.out.printf(
        Locale.ROOT,
        "%-46s %6.0f ms, CPU %6.0f ms%n",
        what,
        walls.get(goes / 2),
        cpus.get(goes / 2));
  }

  private void run() throws IOException, InterruptedException {
    String note;
    try (Stream<Path> notes = Files.list(log.resolve("entries"))) {
      note =
          "entries/"
              + notes
                  .map(f -> f.getFileName().toString())
                  .sorted()
                  .skip(1)
                  .findFirst()
                  .orElseThrow();
    }
    Path file = log.resolve(note);
    String text = Files.readString(file);
    time(
        "opened, and the first page sent (goal 1 s, 3 s)",
        1,
        go -> {
          Desk opened = Desk.open(log, Clock.system(ZoneOffset.UTC));
          desk = opened;
          letIn(opened.address());
          get("/");
        });
    Objects.requireNonNull(desk).close();
    time(
        "opened again, its caches kept (goal 1 s, 3 s)",
        1,
        go -> {
          Desk opened = Desk.open(log, Clock.system(ZoneOffset.UTC));
          desk = opened;
          letIn(opened.address());
          get("/");
        });
    // What is made ready behind the first page is not to be counted with what comes.
    get("/today/questions");
    get("/as/public/index.html");
    look(note, text, 0);
    time("a page, unchanged log", GOES, go -> get("/notes"));
    time("preview of what is typed (goal 300 ms, 1 s)", GOES, go -> look(note, text, go));
    time(
        "Today after a note was changed (goal 300 ms)",
        GOES,
        go -> {
          Files.writeString(file, text + "\nOne line more, the " + go + "th.\n");
          get("/");
        });
    String photo;
    try (Stream<Path> photos = Files.walk(log.resolve("photos"))) {
      photo =
          log.relativize(
                  photos
                      .filter(f -> f.toString().endsWith(".jpg"))
                      .sorted()
                      .findFirst()
                      .orElseThrow())
              .toString();
    }
    time(
        "what a region will fill (goal 500 ms)",
        GOES,
        go ->
            get(
                "/photographs/filled?photo="
                    + encoded(photo)
                    + "&region="
                    + encoded("0.1,0.1,0." + (3 + go % 6) + ",0.4 lines -")));
    time("contact sheet", 3, go -> get("/photographs"));
    time("facts as seen by everybody", 3, go -> get("/beside/facts?for=public"));
    System.gc();
    Runtime runtime = Runtime.getRuntime();
    System.out.printf(
        Locale.ROOT,
        "heap in use %d MB (goal below 700)%n",
        (runtime.totalMemory() - runtime.freeMemory()) >> 20);
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  private void letIn(URI address) throws IOException, InterruptedException {
    origin = address.getScheme() + "://" + address.getAuthority();
    HttpResponse<String> in =
        client.send(HttpRequest.newBuilder(address).build(), HttpResponse.BodyHandlers.ofString());
    cookie = in.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst(";.*", "");
  }

  private void get(String path) throws IOException, InterruptedException {
    send(HttpRequest.newBuilder(URI.create(origin + path)).GET());
  }

  private void look(String note, String text, int go) throws IOException, InterruptedException {
    String form =
        "file="
            + encoded(note)
            + "&for=public&stamp=&text="
            + encoded(text + "\nTyped " + go + ".\n");
    send(
        HttpRequest.newBuilder(URI.create(origin + "/notes/look"))
            .header("Content-Type", "application/x-www-form-urlencoded")
            .header("Origin", origin)
            .POST(HttpRequest.BodyPublishers.ofString(form)));
  }

  private void send(HttpRequest.Builder request) throws IOException, InterruptedException {
    HttpResponse<String> reply =
        client.send(request.header("Cookie", cookie).build(), HttpResponse.BodyHandlers.ofString());
    if (reply.statusCode() != 200) {
      throw new IllegalStateException(reply.statusCode() + ": " + reply.body());
    }
  }
}
