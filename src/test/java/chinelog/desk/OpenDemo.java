package chinelog.desk;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.OncePerClass;
import chinelog.desk.files.LogFiles;
import chinelog.publish.Demo;
import chinelog.site.Barriers;
import chinelog.site.Browser;
import chinelog.site.Patience;
import java.io.IOException;
import java.net.URI;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * A copy of the demo open in a browser, made when a test first wants it; each leaves it as it was.
 */
@OncePerClass
public final class OpenDemo implements AutoCloseable {

  private static final Instant NOW = Instant.parse("2026-06-01T12:00:00Z");

  private final Path log;
  private final Desk desk;
  private final String origin;
  private final SortedMap<String, byte[]> first;
  private boolean isIn;

  public OpenDemo(Demo demo) throws IOException {
    log = Files.createTempDirectory("chinelog-desk").resolve("log");
    demo.copySearched(log);
    first = files();
    desk = Desk.open(log, Clock.fixed(NOW, ZoneOffset.UTC));
    URI address = desk.address();
    origin = address.getScheme() + "://" + address.getAuthority();
  }

  public Path log() {
    return log;
  }

  /** Opens a page of the desk, such as {@code /photographs}. */
  public void open(Browser browser, String path) {
    if (!isIn) {
      browser.open(desk.address());
      browser.await("location.search === '' && document.querySelector('.masthead') !== null");
      isIn = true;
    }
    browser.open(URI.create(origin + path));
  }

  public String text(String file) throws IOException {
    return Files.readString(log.resolve(file));
  }

  /** Nobody is shut out of the page as it is. */
  public void shutsNobodyOut(Browser browser) throws IOException {
    assertThat(Barriers.of(browser)).isEmpty();
  }

  /** The names of all files that are not as they were at first. */
  public List<String> changed() throws IOException {
    SortedMap<String, byte[]> now = files();
    return Stream.concat(first.keySet().stream(), now.keySet().stream())
        .distinct()
        .filter(f -> !java.util.Arrays.equals(first.get(f), now.get(f)))
        .sorted()
        .toList();
  }

  /** Waits until a file holds what it should. */
  public void awaitText(String file, String text) throws IOException {
    Patience.until(() -> Files.exists(log.resolve(file)) && text(file).equals(text));
    assertThat(text(file)).isEqualTo(text);
  }

  /** Takes back all that was done in the browser: the first bytes must be there again. */
  public void undoAll(Browser browser) throws IOException {
    open(browser, "/photographs");
    while (LogFiles.open(log).findUndo().isPresent()) {
      String undone = browser.text("fetch('/turn/back', {method: 'POST'}).then(r => r.text())");
      assertThat(undone).contains("\"done\"");
    }
    assertThat(changed()).isEmpty();
  }

  private SortedMap<String, byte[]> files() throws IOException {
    SortedMap<String, byte[]> files = new TreeMap<>();
    Files.walkFileTree(
        log,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path dir, BasicFileAttributes attributes) {
            return dir.equals(log.resolve(".chinelog"))
                ? FileVisitResult.SKIP_SUBTREE
                : FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            files.put(log.relativize(file).toString(), Files.readAllBytes(file));
            return FileVisitResult.CONTINUE;
          }
        });
    return files;
  }

  @Override
  public void close() throws IOException {
    desk.close();
    delete(log.getParent());
  }

  static void delete(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
