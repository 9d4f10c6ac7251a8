package chinelog.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Whoever is not the maker's browser gets nothing: requests written byte by byte, as no browser
 * would send them. After OWASP's cheat sheets on cross-site request forgery and on DNS rebinding.
 */
class AttacksTest {

  private static final String SECRET = "Nothing of it may be told.";

  @TempDir static Path folder;
  private static Desk desk;
  private static int port;
  private static String cookie;

  @BeforeAll
  static void open() throws IOException {
    SmallDesk.layDown(folder);
    Files.createSymbolicLink(folder.resolve("photos/out.jpg"), Path.of("/etc/hostname"));
    desk = Desk.open(folder, Clock.system(ZoneId.of("UTC")));
    URI first = desk.address();
    port = first.getPort();
    String let = raw("GET " + first.getPath() + "?" + first.getQuery() + " HTTP/1.1", host());
    cookie = "Cookie: " + let.split("(?i)set-cookie: ")[1].split(";")[0];
    assertThat(let).contains("HttpOnly").contains("SameSite=Strict");
  }

  @AfterAll
  static void close() throws IOException {
    desk.close();
  }

  private static String host() {
    return "Host: 127.0.0.1:" + port;
  }

  private static String origin() {
    return "Origin: http://127.0.0.1:" + port;
  }

  /** What a request, line by line, is answered with. */
  private static String raw(String... lines) throws IOException {
    return raw(List.of(lines), "");
  }

  private static String raw(List<String> lines, String body) throws IOException {
    try (Socket socket = new Socket(InetAddress.getByName("127.0.0.1"), port)) {
      String head = String.join("\r\n", lines) + "\r\nConnection: close\r\n\r\n";
      socket.getOutputStream().write((head + body).getBytes(StandardCharsets.UTF_8));
      socket.getOutputStream().flush();
      socket.setSoTimeout(10_000);
      ByteArrayOutputStream all = new ByteArrayOutputStream();
      socket.getInputStream().transferTo(all);
      return all.toString(StandardCharsets.UTF_8);
    }
  }

  private static String post(String path, String form, String... headers) throws IOException {
    List<String> lines = new java.util.ArrayList<>(List.of("POST " + path + " HTTP/1.1"));
    lines.addAll(List.of(headers));
    lines.add("Content-Type: application/x-www-form-urlencoded");
    lines.add("Content-Length: " + form.length());
    return raw(lines, form);
  }

  private static final String TEXT = "/text?file=" + SmallDesk.NOTE;

  @Test
  void theMakersOwnBrowserIsAnswered() throws IOException {
    String page = raw("GET " + TEXT + " HTTP/1.1", host(), cookie);
    assertThat(page).startsWith("HTTP/1.1 200").contains(SECRET);
    assertThat(page.toLowerCase())
        .contains("cache-control: no-store")
        .contains("content-security-policy: default-src 'none'")
        .contains("frame-ancestors 'none'")
        .contains("x-content-type-options: nosniff")
        .doesNotContain("access-control-allow");
  }

  @Test
  void aKeyIsGoodUntilABrowserCameInWithIt() throws IOException {
    URI key = desk.address();
    String path = "GET " + key.getPath() + "?" + key.getQuery() + " HTTP/1.1";
    String entrance = raw(path, host());
    assertThat(entrance).startsWith("HTTP/1.1 200");
    assertThat(desk.address()).isNotEqualTo(key);
    raw("GET " + TEXT + " HTTP/1.1", host(), cookie);
    String given = given(entrance);
    assertThat(given(raw(path, host()))).as("asked for twice").isEqualTo(given);
    assertThat(given).isNotEqualTo(cookie);
    assertThat(raw("GET " + TEXT + " HTTP/1.1", host(), given)).startsWith("HTTP/1.1 200");
    assertThat(raw(path, host())).startsWith("HTTP/1.1 401").doesNotContain("Set-Cookie");
    assertThat(raw("GET /?key=guess HTTP/1.1", host())).startsWith("HTTP/1.1 401");
  }

  /** The cookie that a reply sets, as a browser sends it back. */
  private static String given(String reply) {
    return reply.replaceAll("(?is).*Set-Cookie: ([^;]*);.*", "Cookie: $1");
  }

  @Test
  void withoutTheCookieNothingIsTold() throws IOException {
    assertThat(raw("GET " + TEXT + " HTTP/1.1", host()))
        .startsWith("HTTP/1.1 401")
        .doesNotContain(SECRET);
    assertThat(raw("GET " + TEXT + " HTTP/1.1", host(), "Accept-Language: de-CH,de;q=0.9"))
        .contains("Dieser Browser wurde nicht eingelassen.");
    assertThat(raw("GET /nowhere HTTP/1.1", host(), cookie, "Accept-Language: de"))
        .startsWith("HTTP/1.1 404")
        .contains("Eine solche Seite gibt es nicht.");
    String other = cookie.substring(0, cookie.length() - 1) + (cookie.endsWith("A") ? "B" : "A");
    assertThat(raw("GET " + TEXT + " HTTP/1.1", host(), other)).startsWith("HTTP/1.1 401");
  }

  /** DNS rebinding: another name that leads to this machine. */
  @ParameterizedTest
  @ValueSource(
      strings = {"evil.example", "evil.example:PORT", "localhost", "127.0.0.1", "", "[::1]:PORT"})
  void underAnotherNameNothingIsTold(String name) throws IOException {
    String host = "Host: " + name.replace("PORT", "" + port);
    assertThat(raw("GET " + TEXT + " HTTP/1.1", host, cookie))
        .startsWith("HTTP/1.1 4")
        .doesNotContain(SECRET);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Origin: http://evil.example",
        "Origin: null",
        "Origin: http://127.0.0.1:1",
        "Origin: https://127.0.0.1:PORT",
        "Sec-Fetch-Site: cross-site",
        "X-None: none"
      })
  void noOtherPageChangesAnything(String header) throws IOException {
    String before = Files.readString(folder.resolve("log.yaml"));
    String reply =
        post(
            "/set",
            "file=log.yaml&at=title&value=Hers",
            host(),
            cookie,
            header.replace("PORT", "" + port));
    assertThat(reply).startsWith("HTTP/1.1 403");
    assertThat(Files.readString(folder.resolve("log.yaml"))).isEqualTo(before);
  }

  @Test
  void noOtherPageReadsAnything() throws IOException {
    assertThat(
            raw(
                "GET " + TEXT + " HTTP/1.1",
                host(),
                cookie,
                "Sec-Fetch-Site: cross-site",
                "Sec-Fetch-Mode: no-cors"))
        .startsWith("HTTP/1.1 403")
        .doesNotContain(SECRET);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/published/../log.yaml",
        "/published/..%2flog.yaml",
        "/published/%2e%2e/log.yaml",
        "/published/public/..%5c..%5clog.yaml",
        "/published//etc/hostname",
        "/as/public/../../log.yaml",
        "/as/..%2f..%2flog.yaml/x",
        "/own/../log.yaml",
        "/text?file=../hostname",
        "/text?file=/etc/hostname",
        "/text?file=%2fetc%2fhostname",
        "/text?file=entries%2f..%2f..%2fx",
        "/text?file=photos/out.jpg",
        "/text?file=.chinelog/desk/address",
        "/notes/picture?photograph=photos/out.jpg",
        "/notes/picture?photograph=../../etc/hostname"
      })
  void noPathLeavesTheLog(String path) throws IOException {
    String reply = raw("GET " + path + " HTTP/1.1", host(), cookie);
    assertThat(reply).startsWith("HTTP/1.1 4");
    assertThat(reply)
        .doesNotContain("The log of one build.")
        .doesNotContain(Files.readString(Path.of("/etc/hostname")).strip() + "\n");
  }

  @Test
  void noWriteLeavesTheLog() throws IOException {
    for (String file :
        List.of("../x.md", "/tmp/x.md", "published/x.md", ".chinelog/x", "photos/out.jpg")) {
      String reply =
          post("/notes/save", "file=" + file + "&stamp=&text=mine", host(), cookie, origin());
      assertThat(reply).as(file).doesNotContain("\"stamp\"");
    }
    assertThat(folder.resolve("../x.md")).doesNotExist();
    assertThat(Path.of("/tmp/x.md")).doesNotExist();
  }

  @Test
  void onlyThisMachineReachesIt() throws IOException {
    for (NetworkInterface card : Collections.list(NetworkInterface.getNetworkInterfaces())) {
      for (InetAddress address : Collections.list(card.getInetAddresses())) {
        if (!address.isLoopbackAddress()) {
          assertThat(isOpen(address)).as(address.toString()).isFalse();
        }
      }
    }
  }

  private static boolean isOpen(InetAddress address) {
    try (Socket socket = new Socket()) {
      socket.connect(new java.net.InetSocketAddress(address, port), 500);
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  @Test
  void theAddressIsTheMakersAlone() throws IOException {
    Path plate = folder.resolve(".chinelog/desk/address");
    assertThat(Files.getPosixFilePermissions(plate))
        .isEqualTo(PosixFilePermissions.fromString("rw-------"));
  }

  @Test
  void aFormThatIsTooLargeIsRefused() throws IOException {
    String form = "file=log.yaml&text=" + "x".repeat((8 << 20) + 1);
    assertThat(post("/notes/save", form, host(), cookie, origin())).startsWith("HTTP/1.1 413");
  }

  @Test
  void aDeskClosedTwiceLeavesTheAddressOfTheNext(@TempDir Path other) throws IOException {
    SmallDesk.layDown(other);
    Desk first = Desk.open(other, Clock.system(ZoneId.of("UTC")));
    first.close();
    try (Desk next = Desk.open(other, Clock.system(ZoneId.of("UTC")))) {
      first.close();
      assertThat(Desk.findOpen(other)).contains(next.address());
    }
    assertThat(Desk.findOpen(other)).isEmpty();
  }
}
