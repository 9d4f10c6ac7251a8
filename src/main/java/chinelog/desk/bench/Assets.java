package chinelog.desk.bench;

import chinelog.desk.web.Reply;
import chinelog.desk.web.Routes;
import chinelog.desk.web.WebRequest;
import chinelog.markup.Theme;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The desk's own style, scripts and typefaces, and the libraries that come in jars of their own.
 * They hold nothing of the log, so a browser may keep them, under a path that no other start of the
 * program uses.
 */
public final class Assets implements DeskPage {

  private static final int PATH_BYTES = 6;
  private static final String LIBRARIES = "lib/";
  private static final String FONTS = "fonts/";

  private static final Map<String, String> TYPES =
      Map.of(
          "css", "text/css; charset=utf-8",
          "js", "text/javascript; charset=utf-8",
          "svg", "image/svg+xml",
          "woff2", "font/woff2");

  /** Sheets of {@code chinelog/desk/own} that make up {@code desk.css}, in their order. */
  private static final List<String> SHEETS =
      List.of("base.css", "notes.css", "photographs.css", "sheets.css");

  private final String path;
  private final Theme theme;

  public Assets() throws IOException {
    byte[] random = new byte[PATH_BYTES];
    new SecureRandom().nextBytes(random);
    this.path = "/own/" + HexFormat.of().formatHex(random) + "/";
    this.theme = Theme.load(Theme.USUAL, null);
  }

  /** The path below which they are. */
  public String path() {
    return path;
  }

  @Override
  public void answerAt(Routes routes) {
    routes.get(path, this::file);
  }

  private Reply file(WebRequest request) throws IOException {
    String name = request.rest();
    String type = TYPES.get(name.substring(name.lastIndexOf('.') + 1));
    if (type == null || name.contains("..")) {
      return Reply.notFound();
    }
    Optional<byte[]> bytes = find(name);
    return bytes.isEmpty()
        ? Reply.notFound()
        : Reply.bytes(type, bytes.get()).with("Cache-Control", "private, max-age=86400, immutable");
  }

  private Optional<byte[]> find(String name) throws IOException {
    if (name.equals("desk.css")) {
      ByteArrayOutputStream css = new ByteArrayOutputStream();
      css.writeBytes(theme.foundationCss().getBytes(StandardCharsets.UTF_8));
      for (String sheet : SHEETS) {
        css.writeBytes(resource("/chinelog/desk/own/" + sheet).orElse(new byte[0]));
      }
      return Optional.of(css.toByteArray());
    }
    if (name.startsWith(FONTS)) {
      for (Theme.Font font : theme.siteFonts()) {
        if (font.file().equals(name.substring(FONTS.length()))) {
          return Optional.of(font.bytes());
        }
      }
      return Optional.empty();
    }
    if (name.equals("mark.svg")) {
      return resource("/site-template/mark.svg");
    }
    return name.startsWith(LIBRARIES)
        ? library(name.substring(LIBRARIES.length()))
        : resource("/chinelog/desk/own/" + name);
  }

  /** Of a library that comes as a WebJar, such as {@code codemirror__view/index.js}. */
  private static Optional<byte[]> library(String name) throws IOException {
    for (Library library : Library.ALL) {
      if (name.equals(library.name() + ".js")) {
        return resource(library.resource());
      }
    }
    return Optional.empty();
  }

  private static Optional<byte[]> resource(String name) throws IOException {
    try (InputStream in = Assets.class.getResourceAsStream(name)) {
      return in == null ? Optional.empty() : Optional.of(in.readAllBytes());
    }
  }
}
