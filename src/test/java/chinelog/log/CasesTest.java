package chinelog.log;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.problem.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each folder of {@code logs} holds a log and the problems that must be told of it, in order. */
class CasesTest {

  static final LocalDate TODAY = LocalDate.of(2026, 6, 1);
  private static final Path CASES = Path.of("src/test/resources/logs");

  static Stream<Path> cases() throws IOException {
    try (Stream<Path> all = Files.list(CASES)) {
      return all.filter(c -> Files.exists(c.resolve("problems.txt"))).sorted().toList().stream();
    }
  }

  @ParameterizedTest
  @MethodSource("cases")
  @Timeout(20)
  void everyProblemOfTheLogIsToldWithItsPlace(Path folder) throws IOException {
    LogReader reader = new LogReader(TODAY, ZoneId.of("Europe/London"));
    String told =
        reader.read(folder.resolve("log")).problems().stream()
            .map(Problem::toString)
            .collect(Collectors.joining("\n"));
    assertThat(told).isEqualTo(Files.readString(folder.resolve("problems.txt")).strip());
  }
}
