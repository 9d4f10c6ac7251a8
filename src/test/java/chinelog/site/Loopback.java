package chinelog.site;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/** Serves a folder on this machine alone, below a path of its own as many hosts do. */
final class Loopback implements AutoCloseable {

  private static final String BELOW = "/makers/tern-lane/merrow/";

  private final Path folder;
  private final HttpServer server;
  private final ExecutorService workers = Executors.newCachedThreadPool();
  private final List<String> missing = new CopyOnWriteArrayList<>();
  private volatile long lateMillis;

  Loopback(Path folder) throws IOException {
    this.folder = folder;
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext("/", this::answer);
    server.setExecutor(workers);
    server.start();
  }

  /** How much later than the page its pictures and fonts come. */
  void late(long millis) {
    lateMillis = millis;
  }

  URI at(String path) {
    return URI.create("http://127.0.0.1:" + server.getAddress().getPort() + BELOW + path);
  }

  /** The paths asked for in vain. */
  List<String> missing() {
    return List.copyOf(missing);
  }

  private void answer(HttpExchange exchange) throws IOException {
    String path = exchange.getRequestURI().getPath();
    Path file =
        path.startsWith(BELOW) ? folder.resolve(path.substring(BELOW.length())).normalize() : null;
    boolean isThere = file != null && file.startsWith(folder) && Files.isRegularFile(file);
    if (!isThere && !path.equals("/favicon.ico")) {
      missing.add(path);
    }
    byte[] body =
        isThere ? Files.readAllBytes(file) : Files.readAllBytes(folder.resolve("404.html"));
    exchange.getResponseHeaders().set("Content-Type", type(isThere ? path : "404.html"));
    if (path.matches(".*\\.(jpg|png|webp|woff2)")) {
      pause();
    }
    exchange.sendResponseHeaders(isThere ? 200 : 404, body.length);
    exchange.getResponseBody().write(body);
    exchange.close();
  }

  private void pause() {
    try {
      Thread.sleep(lateMillis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static String type(String path) {
    return switch (path.substring(path.lastIndexOf('.') + 1)) {
      case "html" -> "text/html; charset=utf-8";
      case "css" -> "text/css; charset=utf-8";
      case "js" -> "text/javascript; charset=utf-8";
      case "svg" -> "image/svg+xml";
      case "jpg" -> "image/jpeg";
      case "woff2" -> "font/woff2";
      case "xml" -> "application/atom+xml";
      default -> "application/octet-stream";
    };
  }

  @Override
  public void close() {
    server.stop(0);
    workers.shutdownNow();
  }
}
