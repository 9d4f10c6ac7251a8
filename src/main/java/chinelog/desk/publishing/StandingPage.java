package chinelog.desk.publishing;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.web.Reply;
import chinelog.desk.web.WebRequest;
import chinelog.label.Agreement;
import chinelog.log.records.Readers;
import chinelog.site.SiteView;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/** What stands published, and how it differs from what would be published now. */
final class StandingPage {

  private static final String SITE = policy("'self'");

  /** A script bears its style itself, so that it can be sent on as one file with its frames. */
  private static final String TALK = policy("'unsafe-inline'");

  /** The browser's own reader of PDFs is no page of ours. */
  private static final String PRINTED = "frame-ancestors 'none'";

  private static final Map<String, String> TYPES =
      Map.ofEntries(
          Map.entry("html", "text/html; charset=utf-8"),
          Map.entry("css", "text/css; charset=utf-8"),
          Map.entry("jpg", "image/jpeg"),
          Map.entry("svg", "image/svg+xml"),
          Map.entry("xml", "text/xml; charset=utf-8"),
          Map.entry("woff2", "font/woff2"),
          Map.entry("txt", "text/plain; charset=utf-8"),
          Map.entry("vtt", "text/plain; charset=utf-8"),
          Map.entry("srt", "text/plain; charset=utf-8"),
          Map.entry("pdf", "application/pdf"));

  /** What is opened of an instalment; the script shows its frames. */
  private static final Map<String, String> OF_TALK =
      new TreeMap<>(
          Map.of(
              "captions.srt", "captions",
              "chapters.txt", "chapters",
              "description.txt", "description",
              "script.html", "script",
              "script.pdf", "script-printed"));

  private final Bench bench;

  StandingPage(Bench bench) {
    this.bench = bench;
  }

  private Optional<Path> findPlace(String readers) throws IOException {
    Snapshot now = bench.log().now();
    return now.findReaders(readers).map(now.opened()::place);
  }

  /** What readers get, and when they got it last. */
  Map<String, Object> line(Readers group) throws IOException {
    Map<String, Object> line = new HashMap<>(files(group.id()));
    line.put("gets", group.outputs().stream().sorted().map(o -> "gets." + o.name()).toList());
    line.put(
        "partyTo", group.partyTo().stream().filter(p -> !Agreement.isOwn(p)).sorted().toList());
    Path records = bench.folder().resolve("records").resolve(group.id());
    line.put("since", since(records.resolve("published.txt")));
    line.put("audit", text(records.resolve("audit.txt")));
    line.put("register", text(records.resolve("register.txt")));
    return line;
  }

  private static String since(Path file) throws IOException {
    String last = text(file).strip();
    String line = last.substring(last.lastIndexOf('\n') + 1);
    return line.length() < 10 ? "" : line.substring(0, 10);
  }

  private static String text(Path file) throws IOException {
    return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
        ? Files.readString(file, StandardCharsets.UTF_8)
        : "";
  }

  /** The files of an edition that stands which are opened from outside. */
  Map<String, Object> files(String readers) throws IOException {
    List<Map<String, String>> files = new ArrayList<>();
    Path folder = findPlace(readers).orElseThrow();
    String below = "/published/" + readers + "/";
    if (Files.isRegularFile(folder.resolve("site").resolve("index.html"))) {
      files.add(Map.of("name", "site", "address", below + "site/index.html"));
    }
    for (String pdf :
        List.of(
            "build-book",
            "handover",
            "handover-sheets",
            "build-book-print-ready",
            "build-book-cover",
            "patterns",
            "letter",
            "photographs",
            "quotation")) {
      if (Files.isRegularFile(folder.resolve(pdf + ".pdf"))) {
        files.add(Map.of("name", pdf, "address", below + pdf + ".pdf"));
      }
    }
    return Map.of(
        "id",
        readers,
        "title",
        bench.log().now().findReaders(readers).map(Readers::title).orElse(readers),
        "files",
        files,
        "talk",
        talk(folder.resolve("talk"), below + "talk/"),
        "folder",
        folder.toString());
  }

  /** The instalments of a talk, each with its files. */
  private static List<Map<String, Object>> talk(Path folder, String below) throws IOException {
    List<Map<String, Object>> instalments = new ArrayList<>();
    if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      return instalments;
    }
    try (Stream<Path> all = Files.list(folder)) {
      for (Path own : all.filter(Files::isDirectory).sorted().toList()) {
        String name = own.getFileName().toString();
        List<Map<String, String>> files = new ArrayList<>();
        OF_TALK.forEach(
            (file, is) -> {
              if (Files.isRegularFile(own.resolve(file))) {
                files.add(Map.of("name", "talk." + is, "address", below + name + "/" + file));
              }
            });
        instalments.add(Map.of("name", name, "files", files));
      }
    }
    return instalments;
  }

  /** A file of an edition, reached through no link. */
  Reply file(WebRequest request) throws IOException {
    String[] asked = request.rest().split("/", 2);
    Path place = findPlace(asked[0]).orElse(null);
    if (place == null || asked.length < 2) {
      return Reply.notFound();
    }
    Path file = place.resolve(asked[1]).normalize();
    String name = file.getFileName().toString();
    String type = TYPES.get(name.substring(name.lastIndexOf('.') + 1));
    if (type == null
        || !file.startsWith(place)
        || !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
        || !file.toRealPath().equals(file)) {
      return Reply.notFound();
    }
    String policy = asked[1].startsWith("talk/") ? TALK : SITE;
    return Reply.file(type, file).under(type.equals("application/pdf") ? PRINTED : policy);
  }

  private static String policy(String styles) {
    return "default-src 'none'; img-src 'self'; style-src "
        + styles
        + "; font-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'self';"
        + " sandbox allow-same-origin";
  }

  /** The pages of a site that would be others, new or gone if it were published now. */
  Reply changes(WebRequest request) throws IOException {
    Snapshot now = bench.log().now();
    Optional<Readers> readers = now.findReaders(request.text("for"));
    if (readers.isEmpty() || now.opened().hasErrors()) {
      return Reply.html("");
    }
    Path site = now.opened().place(readers.get()).resolve("site");
    SiteView view = now.site(readers.get());
    Map<String, String> pages = view.pages();
    List<Map<String, String>> lines = new ArrayList<>();
    for (Map.Entry<String, String> page : pages.entrySet()) {
      Path standing = site.resolve(page.getKey());
      String fresh = view.findPage(page.getKey()).orElse("");
      boolean isThere = Files.isRegularFile(standing);
      if (!isThere || !told(Files.readString(standing)).equals(told(fresh))) {
        lines.add(
            Map.of(
                "title",
                page.getValue(),
                "how",
                isThere ? "changed" : "new",
                "address",
                "/as/" + readers.get().id() + "/" + page.getKey()));
      }
    }
    for (String gone : gone(site, pages)) {
      lines.add(Map.of("title", gone, "how", "gone", "address", ""));
    }
    Map<String, Object> values = new TreeMap<>();
    values.put("changes", lines);
    values.put("standing", Files.isDirectory(site));
    return bench.frame().part(request, DeskSection.PUBLISHING, "changes.ftlh", values);
  }

  /** What a page tells, without the day on which it was made. */
  private static String told(String html) {
    int from = html.indexOf("<main");
    int to = html.indexOf("</main>");
    return from < 0 || to < from ? html : html.substring(from, to);
  }

  private static List<String> gone(Path site, Map<String, String> pages) throws IOException {
    if (!Files.isDirectory(site)) {
      return List.of();
    }
    try (Stream<Path> all = Files.walk(site)) {
      return all.filter(f -> f.toString().endsWith(".html"))
          .map(f -> site.relativize(f).toString().replace('\\', '/'))
          .filter(f -> !pages.containsKey(f))
          .sorted()
          .toList();
    }
  }
}
