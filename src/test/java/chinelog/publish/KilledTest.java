package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** However a publish ends, the edition that stands is the old one or the new one, and whole. */
@Timeout(600)
@Order(2)
class KilledTest {

  private static final int KILLS = Integer.getInteger("chinelog.kills", 1);

  /** About what a Java that has just started takes for an edition. */
  private static final int LONGEST_MAKING_MILLIS = 3000;

  @TempDir static Path temp;

  private static Path log;
  private static Map<String, String> even;
  private static Map<String, String> odd;

  /** One log for all: every test leaves the odd edition whole. */
  @BeforeAll
  static void publishTwice() throws IOException {
    log = new SmallLog(4, 4).write(temp.resolve("log"));
    // The swap moves folders, whatever is in them.
    Path head = log.resolve("log.yaml");
    Files.writeString(head, Files.readString(head).replace("gets: [site, book]", "gets: [site]"));
    PublishForever.publish(log, 0);
    even = ByteTwinsTest.tree(log, "public");
    PublishForever.publish(log, 1);
    odd = ByteTwinsTest.tree(log, "public");
    assertThat(odd).isNotEqualTo(even);
  }

  /**
   * The swap renames three times: the old edition out of the way, the new one into its place, and
   * the list of its files. Before the second nothing stands; before the third the list is the old.
   */
  @Test
  void aKillBetweenTheRenamingsOfTheSwapLeavesAWholeEdition() throws Exception {
    Path standing = log.resolve("published/public");
    Path aside = log.resolve(".chinelog/set-aside/public");
    for (int renaming = 2; renaming <= 3; renaming++) {
      PublishForever.publish(log, 0);
      killBefore(renaming);
      assertThat(Files.exists(standing)).as("before %d", renaming).isEqualTo(renaming == 3);
      assertThat(aside).as("before %d", renaming).exists();
      findWhole();
    }
  }

  private void killBefore(int renaming) throws Exception {
    Path reached = temp.resolve("reached.txt");
    Process process =
        OtherJava.start(
            temp,
            List.of(),
            "chinelog.publish.StopShort",
            log.toString(),
            Integer.toString(renaming),
            reached.toString());
    while (!Files.exists(reached)) {
      assertThat(process.isAlive()).as(Files.readString(temp.resolve("err.txt"))).isTrue();
      Thread.sleep(20);
    }
    process.destroyForcibly();
    process.waitFor();
    Files.delete(reached);
  }

  /** Moments of a publish, by what is there then. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "records/public/manifest.next.txt",
        ".chinelog/set-aside/public",
      })
  void aStopAtAnyMomentLeavesAWholeEdition(String moment) throws Exception {
    Process process = start(moment);
    assertThat(OtherJava.end(process, temp).status()).isEqualTo(9);
    findWhole();
  }

  @Test
  void aKillAtRandomLeavesAWholeEdition() throws Exception {
    Random random = new Random(49);
    for (int i = 0; i < KILLS; i++) {
      Process process = start("-");
      while (!Files.exists(log.resolve(".chinelog/making/public"))) {
        assertThat(process.isAlive()).as(Files.readString(temp.resolve("err.txt"))).isTrue();
        Thread.sleep(20);
      }
      Thread.sleep(random.nextInt(LONGEST_MAKING_MILLIS));
      process.destroyForcibly();
      process.waitFor();
      findWhole();
    }
  }

  private Process start(String moment) throws IOException {
    return OtherJava.start(
        temp, List.of(), "chinelog.publish.PublishForever", log.toString(), moment);
  }

  /** What the next command finds, before and after it has published. */
  private void findWhole() throws IOException {
    Shelf shelf = new Shelf(log);
    Path standing = log.resolve("published/public");
    if (Files.exists(standing)) {
      assertThat(ByteTwinsTest.tree(log, "public")).isIn(even, odd);
    }
    shelf.recover("public");
    assertThat(ByteTwinsTest.tree(log, "public")).isIn(even, odd);
    assertThat(Manifest.of(standing)).isEqualTo(Manifest.read(shelf.manifest("public")));
    assertThat(PublishForever.publish(log, 1).hasErrors()).isFalse();
    assertThat(ByteTwinsTest.tree(log, "public")).isEqualTo(odd);
    assertThat(log.resolve(".chinelog/making/public")).doesNotExist();
    assertThat(log.resolve(".chinelog/set-aside/public")).doesNotExist();
  }
}
