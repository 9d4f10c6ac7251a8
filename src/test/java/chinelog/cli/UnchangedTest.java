package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.SortedMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What has not changed is not made again; whatever has, or may have, is. */
@Timeout(60)
@Order(2)
class UnchangedTest {

  private static final String STANDS = "nothing has changed since";

  /** Longer than the span in which a change may go unseen. */
  private static final long SETTLED_MILLIS = 2100;

  private static final int LOGS = 17;
  private static final Deque<TinyLog> PUBLISHED = new ArrayDeque<>();

  private final TinyLog log = PUBLISHED.remove();

  /** Many logs at once, so that all wait together. */
  @BeforeAll
  static void publishSettledLogs(@TempDir Path folder) throws InterruptedException {
    for (int i = 0; i < LOGS; i++) {
      PUBLISHED.add(TinyLog.in(folder.resolve("log" + i)));
    }
    Thread.sleep(SETTLED_MILLIS);
    for (TinyLog settled : PUBLISHED) {
      assertThat(settled.run("publish").out()).doesNotContain(STANDS);
    }
  }

  @Test
  void theSecondTimeNothingIsMadeAndEveryFileStaysAsItWas() {
    var before = log.everything();
    Said said = log.run("publish");
    assertThat(said.status()).isZero();
    assertThat(said.out())
        .contains("For public:\n  stands ", "For workshop:\n  stands ", "site/index.html")
        .doesNotContain("shown");
    assertThat(log.everything()).isEqualTo(before);
  }

  @Test
  void onlyTheEditionThatIsNotAsItWasLeftIsMadeAgain() {
    log.remove("published/public/site/index.html");
    assertThat(log.run("publish").out())
        .contains("For public:\n  shown ", "For workshop:\n  stands ");
    assertThat(log.path("published/public/site/index.html")).exists();
  }

  /**
   * @param change to the log after it was published
   */
  record Case(String name, Consumer<TinyLog> change) {
    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Case> changes() {
    return Stream.of(
        new Case("a word", l -> l.replace(TinyLog.NOTE, "lies straight", "lies crooked")),
        new Case("a photograph more", l -> l.photo("photos/2026-03-26_2.png")),
        new Case("a new note", l -> l.write("entries/2026-03-27-more.md", "More of it.\n")),
        new Case(
            "a photograph's words", l -> l.write("photos/photos.yaml", "keel.png: {alt: K}\n")),
        new Case("a photograph gone and its mention", UnchangedTest::withoutPhoto),
        new Case("a theme", l -> l.write("themes/mine/notes.txt", "x")),
        new Case("a file of the same size and time", UnchangedTest::unseen),
        new Case("the ledger", l -> l.write("records/public/ledger.csv", "")),
        new Case("the register gone", l -> l.remove("records/public/register.txt")),
        new Case("the cache gone", l -> l.remove(".chinelog/standing/public")),
        new Case("a published file touched", UnchangedTest::touched));
  }

  private static void withoutPhoto(TinyLog log) {
    log.write(TinyLog.NOTE, log.read(TinyLog.NOTE).replaceAll("!\\[[^\\]]*\\]\\([^)]*\\)", ""));
    log.remove(TinyLog.PHOTO);
  }

  private static void unseen(TinyLog log) {
    log.with(
        () -> {
          Path note = log.path(TinyLog.NOTE);
          FileTime time = Files.getLastModifiedTime(note);
          log.replace(TinyLog.NOTE, "straight", "sideways");
          Files.setLastModifiedTime(note, time);
        });
  }

  private static void touched(TinyLog log) {
    log.with(
        () ->
            Files.setLastModifiedTime(
                log.path("published/public/site/index.html"), FileTime.from(Instant.EPOCH)));
  }

  @ParameterizedTest
  @MethodSource("changes")
  void aChangeIsSeen(Case changed) {
    changed.change.accept(log);
    Said said = log.run("publish", "--for", "public");
    assertThat(said.err()).doesNotContain("error");
    assertThat(said.out()).contains("shown").doesNotContain(STANDS);
    // What was kept from before makes no difference to what comes of it.
    SortedMap<String, String> made = published();
    for (String folder : List.of("published", "records", ".chinelog")) {
      log.move(folder, "../gone/" + log.path("").getFileName() + folder);
    }
    log.run("publish", "--for", "public");
    assertThat(published()).isEqualTo(made);
  }

  private SortedMap<String, String> published() {
    return log.everything().tailMap("published/public/").headMap("published/public0");
  }

  @Test
  void aMarkPutOnAPublishedParagraphTakesItOut() {
    assertThat(log.read("published/public/site/" + page())).contains("lies straight");
    log.replace(TinyLog.NOTE, "lies straight.", "lies straight. {under=lines}");
    assertThat(log.run("publish").status()).isZero();
    assertThat(log.read("published/public/site/" + page())).doesNotContain("lies straight");
  }

  private String page() {
    return log.everything().keySet().stream()
        .filter(f -> f.startsWith("published/public/site/posts/"))
        .findFirst()
        .orElseThrow()
        .substring("published/public/site/".length());
  }

  @Test
  void anotherDayIsAnotherEdition() {
    assertThat(log.run("publish", "--as-of", "2026-05-30").out()).doesNotContain(STANDS);
  }

  @Test
  void whatWasWrittenJustBeforeStandsTheNextTime() {
    log.replace(TinyLog.NOTE, "lies straight", "lies crooked");
    log.run("publish");
    assertThat(log.run("publish").out()).contains(STANDS);
    log.replace(TinyLog.NOTE, "lies crooked", "lies straight");
    assertThat(log.run("publish").out()).doesNotContain(STANDS);
  }

  @Test
  void aPublishedFileThatSomebodyChangedIsNotOverwritten() {
    String page = "published/public/site/about.html";
    String edited = log.read(page) + "<!-- mine -->";
    log.write(page, edited);
    Said said = log.run("publish");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(said.err())
        .contains(page + ": error: This was changed after chinelog wrote it")
        .contains("delete it; then publish again");
    assertThat(log.read(page)).isEqualTo(edited);
    log.remove(page);
    assertThat(log.run("publish").status()).isZero();
    assertThat(log.read(page)).doesNotContain("mine");
  }
}
