package chinelog.site;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.WebSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** A Chromium without a window, driven by the Chrome DevTools Protocol, stable version 1.3. */
final class Browser {

  private static final int PATIENCE_SECONDS = 120;

  private final Process process;
  private final WebSocket socket;
  private final AtomicInteger lastId = new AtomicInteger();
  private final Map<Object, CompletableFuture<Map<?, ?>>> answers = new ConcurrentHashMap<>();
  private final List<String> complaints = new CopyOnWriteArrayList<>();
  private volatile CompletableFuture<Void> loaded = new CompletableFuture<>();

  private Browser(Process process, URI page) {
    this.process = process;
    this.socket =
        HttpClient.newHttpClient().newWebSocketBuilder().buildAsync(page, new Listener()).join();
  }

  /** Where Chromium is; empty where there is none. */
  static Optional<Path> installed() {
    return Stream.of(String.valueOf(System.getenv("PATH")).split(java.io.File.pathSeparator))
        .flatMap(
            p ->
                Stream.of("chromium", "chromium-browser", "google-chrome").map(Path.of(p)::resolve))
        .filter(Files::isExecutable)
        .findFirst();
  }

  /**
   * Starts the browser.
   *
   * @param profile a folder that it may fill
   */
  static Browser start(Path browser, Path profile) throws IOException, InterruptedException {
    List<String> command =
        new ArrayList<>(
            List.of(
                browser.toString(),
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--no-first-run",
                "--no-proxy-server",
                "--remote-debugging-port=0",
                "--user-data-dir=" + profile,
                "about:blank"));
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    Browser started = new Browser(process, page(profile.resolve("DevToolsActivePort"), process));
    for (String domain : List.of("Page", "Runtime", "Log", "Network")) {
      started.send(domain + ".enable", "{}");
    }
    return started;
  }

  private static URI page(Path portFile, Process process) throws IOException, InterruptedException {
    for (int i = 0; i < PATIENCE_SECONDS * 10 && process.isAlive(); i++) {
      if (Files.exists(portFile) && Files.size(portFile) > 0) {
        String port = Files.readAllLines(portFile).get(0);
        String pages =
            HttpClient.newHttpClient()
                .send(
                    HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/json"))
                        .build(),
                    HttpResponse.BodyHandlers.ofString())
                .body();
        for (Object page : (List<?>) parsed(pages)) {
          if ("page".equals(((Map<?, ?>) page).get("type"))) {
            return URI.create(String.valueOf(((Map<?, ?>) page).get("webSocketDebuggerUrl")));
          }
        }
      }
      Thread.sleep(100);
    }
    process.destroyForcibly();
    throw new IOException("Chromium did not start");
  }

  private static Object parsed(String json) {
    LoadSettings settings = LoadSettings.builder().setCodePointLimit(Integer.MAX_VALUE).build();
    return new Load(settings).loadFromString(json);
  }

  /** Runs a script, before any of their own, in all pages opened from now on. */
  void prepare(String script) {
    send("Page.addScriptToEvaluateOnNewDocument", "{\"source\":" + Json.of(script) + "}");
  }

  /** The window's size, in CSS pixels, and how many of the screen's go to one of them. */
  void size(int width, int height, int density) {
    send(
        "Emulation.setDeviceMetricsOverride",
        """
        {"width":%d,"height":%d,"deviceScaleFactor":%d,"mobile":false}"""
            .formatted(width, height, density));
  }

  void scheme(String scheme) {
    send(
        "Emulation.setEmulatedMedia",
        """
        {"features":[{"name":"prefers-color-scheme","value":"%s"}]}"""
            .formatted(scheme));
  }

  /** Shows pages as on {@code print} or {@code screen}; empty for what is usual. */
  void medium(String medium) {
    send("Emulation.setEmulatedMedia", "{\"media\":\"" + medium + "\"}");
  }

  /** Whether every page asks for all its files anew. */
  void keepNothing(boolean on) {
    send("Network.setCacheDisabled", "{\"cacheDisabled\":" + on + "}");
  }

  void scripts(boolean on) {
    send("Emulation.setScriptExecutionDisabled", "{\"value\":" + !on + "}");
  }

  /** Opens a page and waits until all that it asks for at first has come. */
  void open(URI page) {
    loaded = new CompletableFuture<>();
    send("Page.navigate", "{\"url\":" + Json.of(page.toString()) + "}");
    arrive();
  }

  /** Presses a key and lets it go; where it leads to another page, waits for that one. */
  void press(String key, boolean leadsOn) {
    loaded = new CompletableFuture<>();
    String text = key.equals("Enter") ? "\\r" : key.length() == 1 ? key : "";
    for (String type : List.of("keyDown", "keyUp")) {
      send(
          "Input.dispatchKeyEvent",
          """
          {"type":"%s","key":"%s","code":"%s","windowsVirtualKeyCode":%d%s}"""
              .formatted(
                  type,
                  key,
                  key,
                  code(key),
                  type.equals("keyDown") && !text.isEmpty() ? ",\"text\":\"" + text + "\"" : ""));
    }
    if (leadsOn) {
      arrive();
    }
  }

  private static int code(String key) {
    return switch (key) {
      case "Tab" -> 9;
      case "Enter" -> 13;
      case "Escape" -> 27;
      case "ArrowLeft" -> 37;
      case "ArrowRight" -> 39;
      default -> Character.toUpperCase(key.charAt(0));
    };
  }

  private void arrive() {
    loaded.orTimeout(PATIENCE_SECONDS, TimeUnit.SECONDS).join();
  }

  /** What an expression gives, once it is settled: a string, number, list, map or null. */
  @Nullable Object evaluate(String expression) {
    Map<?, ?> answer =
        send(
            "Runtime.evaluate",
            "{\"expression\":"
                + Json.of(expression)
                + ",\"awaitPromise\":true,\"returnByValue\":true}");
    if (answer.containsKey("exceptionDetails")) {
      throw new IllegalStateException(String.valueOf(answer.get("exceptionDetails")));
    }
    return ((Map<?, ?>) answer.get("result")).get("value");
  }

  String text(String expression) {
    return String.valueOf(evaluate(expression));
  }

  double number(String expression) {
    return Double.parseDouble(text(expression));
  }

  /** What the console was told since the last call: errors, warnings and whatever else. */
  List<String> complaints() {
    List<String> all = List.copyOf(complaints);
    complaints.clear();
    return all;
  }

  private Map<?, ?> send(String method, String parameters) {
    int id = lastId.incrementAndGet();
    CompletableFuture<Map<?, ?>> answer = new CompletableFuture<>();
    answers.put(id, answer);
    socket
        .sendText(
            "{\"id\":" + id + ",\"method\":\"" + method + "\",\"params\":" + parameters + "}", true)
        .join();
    Map<?, ?> got = answer.orTimeout(PATIENCE_SECONDS, TimeUnit.SECONDS).join();
    if (got.get("result") instanceof Map<?, ?> result) {
      return result;
    }
    throw new IllegalStateException(method + ": " + got);
  }

  private void hear(Map<?, ?> message) {
    CompletableFuture<Map<?, ?>> waiting =
        message.containsKey("id") ? answers.remove(message.get("id")) : null;
    if (waiting != null) {
      waiting.complete(message);
      return;
    }
    switch (String.valueOf(message.get("method"))) {
      case "Page.loadEventFired" -> loaded.complete(null);
      case "Runtime.consoleAPICalled", "Runtime.exceptionThrown", "Log.entryAdded" ->
          complaints.add(String.valueOf(message.get("params")));
      default -> {}
    }
  }

  private final class Listener implements WebSocket.Listener {
    private final StringBuilder text = new StringBuilder();

    @Override
    public @Nullable CompletionStage<?> onText(WebSocket from, CharSequence part, boolean last) {
      text.append(part);
      if (last) {
        String whole = text.toString();
        text.setLength(0);
        if (parsed(whole) instanceof Map<?, ?> message) {
          hear(message);
        }
      }
      from.request(1);
      return null;
    }
  }

  /** Ends it. */
  void stop() throws InterruptedException {
    socket.abort();
    process.destroy();
    if (!process.waitFor(10, TimeUnit.SECONDS)) {
      process.destroyForcibly();
    }
  }
}
