package chinelog.site;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.interactions.PointerInput;
import org.openqa.selenium.interactions.Sequence;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/**
 * A Chromium without a window, which starts when it is first used; where it or its driver is
 * missing, tests that use it skip.
 */
public final class Browser implements AutoCloseable {

  private static final Duration PATIENCE = Duration.ofSeconds(120);

  private static final List<String> CHROMIUM =
      List.of("chromium", "chromium-browser", "google-chrome");

  private static final Logger QUIET = Logger.getLogger("org.openqa.selenium.devtools");

  private final List<String> prepared = new ArrayList<>();
  private @Nullable ChromeDriver driver;

  /** Where a program of one of these names is; empty where there is none. */
  private static Optional<Path> installed(List<String> names) {
    return Stream.of(String.valueOf(System.getenv("PATH")).split(java.io.File.pathSeparator))
        .flatMap(folder -> names.stream().map(Path.of(folder)::resolve))
        .filter(Files::isExecutable)
        .findFirst();
  }

  /** Skips the test where there is no browser, and has it as if it had just been started. */
  public void fresh() {
    if (driver == null) {
      driver = start();
    }
    prepared.forEach(
        id -> command("Page.removeScriptToEvaluateOnNewDocument", Map.of("identifier", id)));
    prepared.clear();
    keepNothing(false);
    scripts(true);
    medium("");
    open(URI.create("about:blank"));
    complaints();
  }

  private ChromeDriver start() {
    Optional<Path> chromium = installed(CHROMIUM);
    Optional<Path> chromedriver = installed(List.of("chromedriver"));
    assumeTrue(
        chromium.isPresent() && chromedriver.isPresent(),
        "Chromium or chromedriver is not installed; nothing was looked at");
    // It tells of the lack of a library that is not used here.
    QUIET.setLevel(Level.SEVERE);
    LoggingPreferences console = new LoggingPreferences();
    console.enable(LogType.BROWSER, Level.ALL);
    ChromeOptions options = new ChromeOptions();
    options.setBinary(chromium.orElseThrow().toFile());
    options.setCapability(ChromeOptions.LOGGING_PREFS, console);
    options.addArguments(
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-dev-shm-usage",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--no-first-run",
        "--accept-lang=en-US",
        "--no-proxy-server");
    ChromeDriverService service =
        new ChromeDriverService.Builder()
            .usingDriverExecutable(chromedriver.orElseThrow().toFile())
            .usingAnyFreePort()
            .withSilent(true)
            .build();
    ChromeDriver driver = new ChromeDriver(service, options);
    driver.manage().timeouts().pageLoadTimeout(PATIENCE).scriptTimeout(PATIENCE);
    driver.executeCdpCommand("Network.enable", Map.of());
    return driver;
  }

  private ChromeDriver driver() {
    if (driver == null) {
      throw new IllegalStateException("ask for a fresh one first");
    }
    return driver;
  }

  private Map<String, Object> command(String name, Map<String, Object> parameters) {
    return driver().executeCdpCommand(name, parameters);
  }

  /** Runs a script, before any of their own, in all pages opened until it is fresh again. */
  public void prepare(String script) {
    Map<String, Object> said =
        command("Page.addScriptToEvaluateOnNewDocument", Map.of("source", script));
    prepared.add(String.valueOf(said.get("identifier")));
  }

  /** The window's size, in CSS pixels, and how many of the screen's go to one of them. */
  public void size(int width, int height, int density) {
    command(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", density, "mobile", false));
  }

  public void scheme(String scheme) {
    command(
        "Emulation.setEmulatedMedia",
        Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
  }

  /** Asks for pages in a language, such as {@code de}, until it is told another. */
  public void language(String tag) {
    command(
        "Emulation.setUserAgentOverride",
        Map.of("userAgent", text("navigator.userAgent"), "acceptLanguage", tag));
  }

  /** Shows pages as on {@code print} or {@code screen}; empty for what is usual. */
  public void medium(String medium) {
    command("Emulation.setEmulatedMedia", Map.of("media", medium));
  }

  /** Whether every page asks for all its files anew. */
  public void keepNothing(boolean on) {
    command("Network.setCacheDisabled", Map.of("cacheDisabled", on));
  }

  public void scripts(boolean on) {
    command("Emulation.setScriptExecutionDisabled", Map.of("value", !on));
  }

  /** Opens a page and waits until all that it asks for at first has come. */
  public void open(URI page) {
    driver().get(page.toString());
  }

  /** Presses a key and lets it go. */
  public void press(CharSequence key) {
    new Actions(driver()).sendKeys(key).perform();
  }

  /** Presses a key while another is held. */
  public void press(Keys held, CharSequence key) {
    press(List.of(held), key);
  }

  /** Presses a key while others are held. */
  public void press(List<Keys> held, CharSequence key) {
    Actions actions = new Actions(driver());
    held.forEach(actions::keyDown);
    actions.sendKeys(key);
    held.forEach(actions::keyUp);
    actions.perform();
  }

  /** Goes down at one place of the window, in CSS pixels, over to another, and up again. */
  public void drag(PointerInput.Kind kind, int fromX, int fromY, int toX, int toY) {
    PointerInput pointer = new PointerInput(kind, "pointer-" + kind);
    Duration pause = Duration.ofMillis(20);
    Sequence moves =
        new Sequence(pointer, 0)
            .addAction(
                pointer.createPointerMove(
                    Duration.ZERO, PointerInput.Origin.viewport(), fromX, fromY))
            .addAction(pointer.createPointerDown(PointerInput.MouseButton.LEFT.asArg()))
            .addAction(
                pointer.createPointerMove(
                    pause, PointerInput.Origin.viewport(), (fromX + toX) / 2, (fromY + toY) / 2))
            .addAction(pointer.createPointerMove(pause, PointerInput.Origin.viewport(), toX, toY))
            .addAction(pointer.createPointerUp(PointerInput.MouseButton.LEFT.asArg()));
    driver().perform(List.of(moves));
  }

  /** Whether the window is a phone's: narrow, and touched by a finger. */
  public void phone(boolean on) {
    size(on ? 360 : 1280, on ? 740 : 900, 1);
    command(
        "Emulation.setTouchEmulationEnabled",
        on ? Map.of("enabled", true, "maxTouchPoints", 1) : Map.of("enabled", false));
  }

  /** Touches something with a finger and lifts it, once it is in view. */
  public void tap(String selector) {
    String middle =
        text(
            "(e => { e.scrollIntoView({block: 'center', behavior: 'instant'});"
                + " const b = e.getBoundingClientRect();"
                + " return [b.left + b.width / 2, b.top + b.height / 2].map(Math.round).join(' '); })"
                + "(document.querySelector(\""
                + selector.replace("\"", "\\\"")
                + "\"))");
    tap(
        Integer.parseInt(middle.substring(0, middle.indexOf(' '))),
        Integer.parseInt(middle.substring(middle.indexOf(' ') + 1)));
  }

  /** Touches a place of the window, in CSS pixels. */
  public void tap(int x, int y) {
    touch("touchStart", List.of(Map.of("x", x, "y", y)));
    touch("touchEnd", List.of());
  }

  /** A finger goes down at one place, over to another, and up again. */
  public void stroke(int fromX, int fromY, int toX, int toY) {
    touch("touchStart", List.of(Map.of("x", fromX, "y", fromY)));
    touch("touchMove", List.of(Map.of("x", (fromX + toX) / 2, "y", (fromY + toY) / 2)));
    touch("touchMove", List.of(Map.of("x", toX, "y", toY)));
    touch("touchEnd", List.of());
  }

  private void touch(String type, List<Map<String, Integer>> points) {
    command("Input.dispatchTouchEvent", Map.of("type", type, "touchPoints", points));
  }

  /** Opens one tab more and goes to it. */
  public String newTab() {
    String before = driver().getWindowHandle();
    driver().switchTo().newWindow(WindowType.TAB);
    return before;
  }

  public String tab() {
    return driver().getWindowHandle();
  }

  /** Goes to a tab. */
  public void goToTab(String tab) {
    driver().switchTo().window(tab);
  }

  /** Closes this tab and goes to another. */
  public void closeTab(String other) {
    driver().close();
    driver().switchTo().window(other);
  }

  /** Waits until an expression is true; of a page that is just coming, none is. */
  public void await(String expression) {
    String here = "document.body !== null && (" + expression + ")";
    try {
      if (!Patience.until(() -> Boolean.TRUE.equals(evaluate(here)))) {
        throw new IllegalStateException(
            "never true: " + expression + " of " + text("document.body.innerText"));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Presses a key that leads to another page, and waits for that one. */
  public void follow(Keys key) {
    String before = driver().getCurrentUrl();
    press(key);
    long until = System.nanoTime() + PATIENCE.toNanos();
    while (before.equals(driver().getCurrentUrl())
        || !text("document.readyState").equals("complete")) {
      if (System.nanoTime() > until) {
        throw new IllegalStateException(key.name() + " led nowhere from " + before);
      }
      Patience.pause();
    }
  }

  /** What an expression gives, once it is settled: a string, number, list, map or null. */
  public @Nullable Object evaluate(String expression) {
    Map<String, Object> answer =
        command(
            "Runtime.evaluate",
            Map.of("expression", expression, "awaitPromise", true, "returnByValue", true));
    if (answer.containsKey("exceptionDetails")) {
      throw new IllegalStateException(String.valueOf(answer.get("exceptionDetails")));
    }
    return ((Map<?, ?>) answer.get("result")).get("value");
  }

  /** Has the page run a script of the class path. */
  public void run(String resource) throws IOException {
    try (InputStream in = ClassLoader.getSystemResourceAsStream(resource)) {
      evaluate(new String(in.readAllBytes(), StandardCharsets.UTF_8) + "; null");
    }
  }

  public String text(String expression) {
    return String.valueOf(evaluate(expression));
  }

  public double number(String expression) {
    return Double.parseDouble(text(expression));
  }

  /** What the window shows, as PNG; the whole page, however long, if asked for. */
  public byte[] picture(boolean whole) {
    Object data =
        command("Page.captureScreenshot", Map.of("format", "png", "captureBeyondViewport", whole))
            .get("data");
    return java.util.Base64.getDecoder().decode(String.valueOf(data));
  }

  /** What the console was told since the last call: errors, warnings and whatever else. */
  public List<String> complaints() {
    return driver().manage().logs().get(LogType.BROWSER).getAll().stream()
        .map(LogEntry::toString)
        .toList();
  }

  @Override
  public void close() {
    if (driver != null) {
      driver.quit();
    }
  }
}
