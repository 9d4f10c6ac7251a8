package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import chinelog.cli.TinyLog.Said;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.nio.file.attribute.UserDefinedFileAttributeView;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * An audit holds what stands against the list of what was published before it searches it: a file
 * that somebody changed is told, though nothing withheld is in it.
 */
@Timeout(60)
class ChangedEditionTest {

  private static final String STYLE = "published/public/site/assets/site.css";

  @TempDir Path folder;
  private TinyLog log;

  @BeforeEach
  void publish() {
    log = TinyLog.in(folder.resolve("log"));
    assertThat(log.run("publish").status()).isZero();
  }

  private Said audit() {
    return log.run("audit", "--for", "public");
  }

  private void assertTold(String file, String what) {
    Said said = audit();
    assertThat(said.status()).isEqualTo(Main.LEAK);
    assertThat(said.err()).contains("public/" + file).contains(what);
    assertThat(said.out()).doesNotContain("clean");
    assertThat(log.read("records/public/audit.txt")).contains(what);
  }

  @Test
  void whatNobodyTouchedIsClean() {
    assertThat(audit().status()).isZero();
    assertThat(audit().out()).contains("public: clean");
  }

  @Test
  void aStyleOfAnotherColourIsTold() throws IOException {
    FileTime time = Files.getLastModifiedTime(log.path(STYLE));
    log.write(STYLE, log.read(STYLE) + "a { color: red }\n");
    Files.setLastModifiedTime(log.path(STYLE), time);
    assertTold("site/assets/site.css", "Its bytes are not those that were published.");
  }

  @Test
  void anotherTimeIsTold() throws IOException {
    Files.setLastModifiedTime(
        log.path(STYLE), FileTime.from(Instant.parse("2026-04-01T08:13:00Z")));
    assertTold("site/assets/site.css", "Its time is 2026-04-01T08:13:00Z, but was published as ");
  }

  @Test
  void anotherTimeOfAFolderIsTold() throws IOException {
    Files.setLastModifiedTime(
        log.path("published/public/site/assets"),
        FileTime.from(Instant.parse("2026-04-01T08:13:00Z")));
    assertTold("site/assets", "Its time is 2026-04-01T08:13:00Z, but was published as ");
  }

  @Test
  void anotherModeIsTold() throws IOException {
    assumeThat(Files.getFileStore(folder).supportsFileAttributeView("posix")).isTrue();
    Files.setPosixFilePermissions(log.path(STYLE), PosixFilePermissions.fromString("rwxr-x---"));
    assertTold("site/assets/site.css", "Its mode is rwxr-x---, but was published as ");
  }

  @Test
  void anAttributeThatWasNotThereIsTold() throws IOException {
    UserDefinedFileAttributeView view =
        Files.getFileAttributeView(log.path(STYLE), UserDefinedFileAttributeView.class);
    assumeThat(view).isNotNull();
    try {
      view.write("comment", ByteBuffer.wrap(new byte[] {'x'}));
    } catch (IOException e) {
      assumeThat(e).as("this file system keeps no attributes").isNull();
    }
    assertTold("site/assets/site.css", "It has the extra attribute \"comment\"");
  }

  @Test
  void publishingAgainMendsIt() throws IOException {
    Files.setLastModifiedTime(log.path(STYLE), FileTime.from(Instant.EPOCH));
    assertThat(log.run("publish").status()).isZero();
    assertThat(audit().status()).isZero();
  }
}
