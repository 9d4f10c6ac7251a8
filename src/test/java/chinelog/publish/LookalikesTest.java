package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.problem.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LookalikesTest {

  private static final Pattern VALUE = Pattern.compile("looked-at: [0-9a-f]{64}");

  @TempDir Path temp;

  @Test
  void aLookalikeOfAWithheldPhotographStopsThePublishingUntilTheMakerHasLookedAtThisVeryFile()
      throws IOException {
    Path log = new SmallLog(6, 6).write(temp);
    // The bytes differ by what follows the picture; the picture is the same.
    byte[] original = Files.readAllBytes(log.resolve("photos/a-region.jpg"));
    Path again = log.resolve("photos/c-again.jpg");
    Files.write(again, original);
    Files.write(again, new byte[] {0}, java.nio.file.StandardOpenOption.APPEND);

    Matcher value = VALUE.matcher(asked(log).orElseThrow());
    assertThat(value.find()).isTrue();
    Files.writeString(
        log.resolve("photos/photos.yaml"),
        "c-again.jpg: {taken: 2026-03-14 13:00:00, " + value.group() + "}\n",
        java.nio.file.StandardOpenOption.APPEND);
    assertThat(asked(log)).isEmpty();

    Files.write(again, new byte[] {0}, java.nio.file.StandardOpenOption.APPEND);
    assertThat(asked(log)).isPresent();
  }

  @Test
  void aPhotographThatOnlyItsEntryWithholdsIsComparedToo() throws IOException {
    Path log = new SmallLog(6, 6).write(temp);
    Files.writeString(
        log.resolve("entries/2026-03-12-shut.md"), "---\nunder: client\n---\nA day.\n");
    byte[] scene = Files.readAllBytes(log.resolve("photos/a-region.jpg"));
    Files.delete(log.resolve("photos/a-region.jpg"));
    Files.write(log.resolve("photos/d-shut.jpg"), scene);
    Path again = log.resolve("photos/c-again.jpg");
    Files.write(again, scene);
    Files.write(again, new byte[] {0}, java.nio.file.StandardOpenOption.APPEND);
    Files.writeString(
        log.resolve("photos/photos.yaml"),
        """
        d-shut.jpg: {taken: 2026-03-12 10:00:00}
        c-again.jpg: {taken: 2026-03-14 13:00:00}
        """);

    assertThat(problems(log)).anyMatch(p -> p.contains("c-again.jpg looks like photos/d-shut.jpg"));
  }

  /** What the maker is asked to look at when publishing for everybody. */
  private static Optional<String> asked(Path log) throws IOException {
    return problems(log).stream()
        .filter(p -> p.contains("c-again.jpg looks like photos/a-region.jpg"))
        .findFirst();
  }

  private static List<String> problems(Path log) throws IOException {
    return new Publisher(
            log, ByteTwinsTest.AS_OF, ByteTwinsTest.AS_OF, ZoneId.of("UTC"), Progress.SILENT)
        .publish(List.of("public")).problems().stream()
            .filter(Problem::isError)
            .map(Problem::toString)
            .toList();
  }
}
