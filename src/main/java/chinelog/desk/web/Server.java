package chinelog.desk.web;

import chinelog.problem.Sentence;
import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/**
 * Listens on the loopback address alone, on a port that is free, and answers only the browser that
 * was let in by the first address.
 */
public final class Server implements Closeable {

  /** Nothing may be written into a log that was closed: its disk may be taken out. */
  private static final int LAST_ANSWER_SECONDS = 10;

  /** More than a browser opens to one host. */
  private static final int THREADS = 32;

  private final HttpServer server;
  private final ExecutorService workers;
  private final Gate gate;
  private final Supplier<Routes> routes;
  private final Faults faults;
  private final Runnable letIn;

  /** Makes a reply of what went wrong while a request was answered. */
  public interface Faults {
    Reply of(WebRequest request, Exception thrown);

    /** A page for whoever followed a way to what is not there. */
    Reply missing(WebRequest request);
  }

  /**
   * @param routes asked for at every request
   * @param letIn called after a browser was let in: the first address is another from then on
   * @throws IOException if no port can be had
   */
  public Server(Supplier<Routes> routes, Faults faults, Runnable letIn) throws IOException {
    this.routes = routes;
    this.faults = faults;
    this.letIn = letIn;
    InetAddress self = InetAddress.getByAddress(new byte[] {127, 0, 0, 1});
    this.server = HttpServer.create(new InetSocketAddress(self, 0), 0);
    this.gate = new Gate(server.getAddress().getPort(), System::nanoTime);
    this.workers =
        Executors.newFixedThreadPool(
            THREADS,
            run -> {
              Thread thread = new Thread(run, "chinelog-desk");
              thread.setDaemon(true);
              return thread;
            });
    server.createContext("/", this::answer);
    server.setExecutor(workers);
  }

  public void start() {
    server.start();
  }

  /** The address that lets the next browser in. */
  public URI firstAddress() {
    return URI.create(gate.origin() + "/?key=" + gate.key());
  }

  /** Does what nobody waits for; it too ends before the server is closed. */
  public void work(Runnable task) {
    workers.execute(task);
  }

  private void answer(HttpExchange exchange) throws IOException {
    try (exchange) {
      Reply reply;
      try {
        reply = reply(exchange);
      } catch (RefusedException e) {
        Locale locale = WebRequest.locale(exchange.getRequestHeaders());
        reply = Reply.refused(e.status(), e.words().in(locale));
      }
      send(reply, exchange);
    }
  }

  private Reply reply(HttpExchange exchange) throws IOException, RefusedException {
    Headers headers = exchange.getRequestHeaders();
    String asked = exchange.getRequestMethod();
    gate.checkSender(asked, headers);
    String method = asked.equals("HEAD") ? "GET" : asked;
    String path = exchange.getRequestURI().getPath();
    if (path == null || !path.startsWith("/")) {
      throw new RefusedException(400, "This address is not written as addresses are.");
    }
    if (method.equals("GET") && path.equals("/")) {
      String key = WebRequest.of(exchange, path, "").text("key");
      if (!key.isEmpty()) {
        return letIn(key);
      }
    }
    gate.checkCookie(headers);
    Optional<Routes.Found> found = routes.get().find(method, path);
    String rest = found.map(f -> path.substring(f.path().length())).orElse("");
    WebRequest request = WebRequest.of(exchange, path, rest);
    // Fetch Metadata, 2.1: a page was to be opened, and not a part of one.
    boolean isPage = "document".equals(headers.getFirst("Sec-Fetch-Dest"));
    try {
      Reply reply = found.isEmpty() ? Reply.notFound() : found.get().handler().answer(request);
      if (reply.status() != Reply.NOT_FOUND) {
        return reply;
      }
      return isPage
          ? faults.missing(request)
          : Reply.refused(
              Reply.NOT_FOUND, Sentence.of("There is no such page.").in(request.locale()));
    } catch (IOException | RuntimeException e) {
      return faults.of(request, e);
    } catch (StackOverflowError | OutOfMemoryError e) {
      // What a log can bring about must not leave the browser without an answer.
      return faults.of(request, new IllegalStateException(e.toString(), e));
    }
  }

  private Reply letIn(String key) throws RefusedException {
    String cookie = gate.exchange(key);
    letIn.run();
    return entrance().with("Set-Cookie", cookie);
  }

  /**
   * Goes on by itself, as a redirection would be taken as one by whoever led here, and the cookie
   * would not be sent.
   */
  private static Reply entrance() {
    return Reply.html(
        "<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\">"
            + "<meta http-equiv=\"refresh\" content=\"0; url=/\"><title>chinelog</title></head>"
            + "<body><p><a href=\"/\">chinelog</a></p></body></html>");
  }

  private static void send(Reply reply, HttpExchange exchange) throws IOException {
    Headers headers = exchange.getResponseHeaders();
    headers.set("Content-Type", reply.type());
    headers.set("Content-Security-Policy", reply.policy());
    headers.set("Cache-Control", "no-store");
    // By "no-referrer", forms would come without their origin (Fetch, 3.2).
    headers.set("Referrer-Policy", "same-origin");
    headers.set("X-Content-Type-Options", "nosniff");
    headers.set("Cross-Origin-Resource-Policy", "same-origin");
    headers.set("Cross-Origin-Opener-Policy", "same-origin");
    reply.headers().forEach(headers::set);
    headers.remove("Content-Length");
    String length = reply.headers().get("Content-Length");
    // Of this library: 0 stands for a body of unknown length, -1 for none.
    long bytes = length == null ? 0 : length.equals("0") ? -1 : Long.parseLong(length);
    boolean isBare = exchange.getRequestMethod().equals("HEAD");
    exchange.sendResponseHeaders(reply.status(), isBare ? -1 : bytes);
    if (!isBare && bytes >= 0) {
      try (OutputStream out = exchange.getResponseBody()) {
        reply.body().writeTo(out);
      }
    }
  }

  @Override
  public void close() {
    server.stop(0);
    workers.shutdownNow();
    try {
      workers.awaitTermination(LAST_ANSWER_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
