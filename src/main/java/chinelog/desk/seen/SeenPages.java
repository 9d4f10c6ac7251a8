package chinelog.desk.seen;

import chinelog.desk.bench.Bench;
import chinelog.desk.bench.DeskPage;
import chinelog.desk.bench.Snapshot;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.log.records.Readers;
import chinelog.site.SiteView;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Serves the sites of all readers as they would be published now: {@code /as/public/index.html}
 * from the files, {@code /typed/public/entries/….html} with what is being typed.
 */
public final class SeenPages implements DeskPage {

  /** As for the published pages, which are shown within the desk's own and need no script there. */
  private static final String POLICY =
      "default-src 'none'; img-src 'self'; style-src 'self'; font-src 'self'; base-uri 'none';"
          + " form-action 'none'; frame-ancestors 'self'; sandbox allow-same-origin";

  private static final Map<String, String> TYPES =
      Map.of(
          "css", "text/css; charset=utf-8",
          "jpg", "image/jpeg",
          "svg", "image/svg+xml",
          "woff2", "font/woff2");

  private final Bench bench;
  private final String own;

  /** What readers would see of what was typed last, by their id. */
  private final Map<String, SiteView> typed = new HashMap<>();

  /**
   * @param own the path of the desk's own files, of which each page gets a style sheet more
   */
  public SeenPages(Bench bench, String own) {
    this.bench = bench;
    this.own = own;
  }

  @Override
  public void answerAt(Routes routes) {
    routes.get("/as/", this::saved).get("/typed/", this::typed);
  }

  /**
   * A note as readers would see it.
   *
   * @param page its markup; null if they see nothing of it
   * @param address from where its links and pictures lead on
   */
  public record Note(@Nullable String page, String address) {}

  /**
   * A note with what is being typed as readers would see it.
   *
   * @param snapshot of the log with that text
   * @param entry id of the note in the log
   */
  public Note note(Snapshot snapshot, Readers readers, String entry) throws IOException {
    SiteView site = snapshot.site(readers);
    synchronized (typed) {
      typed.put(readers.id(), site);
    }
    String id = snapshot.entryIds(readers).get(entry);
    Optional<String> page = id == null ? Optional.empty() : site.findEntry(id);
    return new Note(
        page.map(html -> with("typed.css", html)).orElse(null),
        "/typed/" + readers.id() + "/entries/" + id + ".html");
  }

  private Reply saved(WebRequest request) throws IOException {
    String readers = readers(request);
    Snapshot now = bench.log().now();
    Optional<Readers> found = now.findReaders(readers);
    if (found.isEmpty()) {
      return Reply.notFound();
    }
    return reply(now.site(found.get()), request.rest().substring(readers.length() + 1), "seen.css");
  }

  private Reply typed(WebRequest request) throws IOException {
    String readers = readers(request);
    SiteView site;
    synchronized (typed) {
      site = typed.get(readers);
    }
    return site == null
        ? Reply.notFound()
        : reply(site, request.rest().substring(readers.length() + 1), "typed.css");
  }

  private static String readers(WebRequest request) {
    String rest = request.rest();
    return rest.contains("/") ? rest.substring(0, rest.indexOf('/')) : "";
  }

  private Reply reply(SiteView site, String path, String sheet) throws IOException {
    String ending = path.substring(path.lastIndexOf('.') + 1);
    if (ending.equals("html") || path.isEmpty()) {
      Optional<String> page = site.findPage(path.isEmpty() ? "index.html" : path);
      if (page.isEmpty() && path.startsWith("entries/")) {
        page = site.findEntry(path.replaceFirst("^entries/", "").replaceFirst("[.]html$", ""));
      }
      return page.map(html -> Reply.html(with(sheet, html)).under(POLICY)).orElse(Reply.notFound());
    }
    Optional<byte[]> bytes =
        path.startsWith("pictures/") ? site.findPicture(path) : site.findAsset(path);
    String type = TYPES.get(ending);
    return bytes.isEmpty() || type == null ? Reply.notFound() : Reply.bytes(type, bytes.get());
  }

  private String with(String sheet, String html) {
    return html.replace(
        "</head>", "<link rel=\"stylesheet\" href=\"" + own + sheet + "\" /></head>");
  }
}
