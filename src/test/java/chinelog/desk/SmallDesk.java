package chinelog.desk;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.desk.files.LogFiles;
import chinelog.site.Browser;
import chinelog.site.Patience;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Objects;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.openqa.selenium.Keys;

/** A small log of the Merrow, open at the desk, and a browser that was let in. */
final class SmallDesk implements AutoCloseable {

  static final String NOTE = "entries/2026-03-25-keel.md";

  /** With a remark, quotes and two spaces where a program would write none. */
  static final String NOTE_TEXT =
      """
      ---
      stage:   planking   # since Monday
      time: '09:10-12:40'
      used: {cedar: 6}
      ---
      # The keel goes down

      The keel lies straight.  The beam comes to 187 mm inside the planking.

      ![The keel on the board](../photos/keel.png)

      ## What the sheet says

      Nothing of it may be told.
      """;

  static final String LOG_TEXT =
      """
      # The log of one build.
      title: Building Merrow
      subject: Merrow
      scale: 1:16
      language: en-GB
      zone: Europe/London
      currency: GBP
      stages:
        planking: {title: Planking}
      agreements:
        lines: {with: Skerrick Yard, covers: the lines plan, from: 2026-03-02}
      readers:
        public: {title: Everybody, party-to: [], gets: [site]}
        workshop: {title: The workshop, party-to: all, gets: [site]}
      limits:
        length: {title: Length over all, rule: hull.loa <= 36 in}
      """;

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-06-01T10:00:00Z"), ZoneId.of("Europe/London"));

  private static final int MOST_TABS = 150;

  private final Path folder;
  private final Browser browser;
  private final Desk desk;

  private SmallDesk(Path folder, Browser browser, Desk desk) {
    this.folder = folder;
    this.browser = browser;
    this.desk = desk;
  }

  /** Lays down the log in an empty folder. */
  static void layDown(Path folder) throws IOException {
    write(folder, "log.yaml", LOG_TEXT);
    write(
        folder,
        "facts.yaml",
        """
        full.loa: {is: 11.20 m ± 5 mm, title: Length over all}
        full.beam: {is: 2.99 m, title: Beam, under: lines}
        hull.loa: full.loa / scale
        """);
    write(
        folder,
        "stock.yaml",
        """
        - material: cedar
          title: Cedar strip
          bought: 60
          date: 2026-03-10
        """);
    write(folder, NOTE, NOTE_TEXT);
    BufferedImage picture = new BufferedImage(480, 320, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = picture.createGraphics();
    g.setPaint(new GradientPaint(0, 0, new Color(0x335577), 480, 320, Color.LIGHT_GRAY));
    g.fillRect(0, 0, 480, 320);
    g.dispose();
    Files.createDirectories(folder.resolve("photos"));
    ImageIO.write(picture, "png", folder.resolve("photos/keel.png").toFile());
  }

  private static void write(Path folder, String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(Objects.requireNonNull(file.getParent()));
    Files.writeString(file, text);
  }

  /** Opens a log, and lets the browser in. */
  static SmallDesk open(Path folder, Browser browser) throws IOException {
    return open(folder, browser, LogFiles::open);
  }

  static SmallDesk open(Path folder, Browser browser, Desk.Filing filing) throws IOException {
    Desk desk = Desk.open(folder, CLOCK, filing);
    URI address = desk.address();
    browser.open(address);
    SmallDesk small = new SmallDesk(folder.toRealPath(), browser, desk);
    small.until("location.pathname === '/' && document.querySelector('main')");
    return small;
  }

  Desk desk() {
    return desk;
  }

  Path folder() {
    return folder;
  }

  String read(String name) throws IOException {
    return Files.readString(folder.resolve(name), StandardCharsets.UTF_8);
  }

  void go(String path) {
    browser.open(URI.create(browser.text("location.origin") + path));
    browser.evaluate("document.fonts.ready.then(() => null)");
  }

  /** Opens a file in its editor. */
  void edit(String file) {
    go((file.startsWith("entries/") ? "/notes/edit?file=" : "/text?file=") + file);
    until("document.body.dataset.ready && document.body.dataset.looked");
  }

  /** Waits until something is so. */
  void until(String condition) {
    browser.await("Boolean(" + condition + ")");
  }

  /** Clicks what a selector names, once it is there. */
  void click(String selector) {
    until("((e) => { e?.click(); return e; })(document.querySelector(" + quoted(selector) + "))");
  }

  /** Waits until a file holds just this. */
  void awaitText(String name, String text) throws IOException {
    Patience.until(() -> read(name).equals(text));
    assertThat(read(name)).isEqualTo(text);
  }

  /** Goes on by the Tab key until something has the focus, which must be seen to have it. */
  void tabTo(String selector) {
    for (int presses = 0; presses < MOST_TABS; presses++) {
      browser.press(Keys.TAB);
      if (browser
          .text("Boolean(document.activeElement?.matches(" + quoted(selector) + "))")
          .equals("true")) {
        return;
      }
    }
    throw new AssertionError("no Tab leads to " + selector);
  }

  /** Types into a field as somebody would who leaves it afterwards. */
  void fill(String selector, String value) {
    browser.evaluate(
        "(() => { const f = document.querySelector("
            + quoted(selector)
            + "); f.focus(); f.value = "
            + quoted(value)
            + "; f.dispatchEvent(new Event('input', {bubbles: true}));"
            + " f.dispatchEvent(new Event('change', {bubbles: true})); })()");
  }

  /** Selects the first occurrence of some words in the editor. */
  void select(String words) {
    editor(
        "const from = view.state.doc.toString().indexOf("
            + quoted(words)
            + "); view.dispatch({selection: {anchor: from, head: from + "
            + words.length()
            + "}}); view.focus();");
  }

  /** Runs a script on the editor, which is called {@code view}. */
  void editor(String script) {
    browser.evaluate(
        "(async () => { const {EditorView} = await import('@codemirror/view');"
            + " const view = EditorView.findFromDOM(document.querySelector('.cm-editor')); "
            + script
            + " })()");
  }

  /** Saves, and waits until it is written. */
  void save() {
    click("#save");
    until("!document.body.classList.contains('changed')");
  }

  static String quoted(String text) {
    return "\""
        + text.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n").replace("\r", "\\r")
        + "\"";
  }

  Optional<String> find(String name) throws IOException {
    return Files.exists(folder.resolve(name)) ? Optional.of(read(name)) : Optional.empty();
  }

  @Override
  public void close() throws IOException {
    browser.open(URI.create("about:blank"));
    desk.close();
  }
}
