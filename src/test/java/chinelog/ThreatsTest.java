package chinelog;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Which test holds which of 83 ways in which a publisher that withholds can leak: {@code
 * threats/threats.csv} names them, and what it names is there.
 */
class ThreatsTest {

  private static final Path TABLE = Path.of("src/test/resources/threats/threats.csv");
  private static final Path TESTS = Path.of("src/test/java/chinelog");

  /** Classes that try many threats and number each. */
  private static final Set<String> NUMBERED =
      Set.of("audit.PlantedLeaksTest", "publish.PlantedFaultsTest");

  /** One line of the table. */
  record Threat(String number, String instruments, List<String> tests, String remark) {

    static Threat of(String line) {
      String[] cells = line.split(",", 5);
      return new Threat(
          cells[0],
          cells[2],
          Arrays.stream(cells[3].split(" ")).filter(t -> !t.isEmpty()).toList(),
          cells[4]);
    }

    @Override
    public String toString() {
      return number;
    }
  }

  static Stream<Threat> threats() throws IOException {
    return Files.readAllLines(TABLE).stream().skip(1).map(Threat::of);
  }

  @Test
  void everyThreatIsInTheTableOnce() throws IOException {
    assertThat(threats().map(Threat::number))
        .containsExactlyElementsOf(
            IntStream.rangeClosed(1, 83)
                .mapToObj(n -> String.format(Locale.ROOT, "T%02d", n))
                .toList());
  }

  @ParameterizedTest
  @MethodSource("threats")
  void everyThreatHasATestThatIsThereOrAReason(Threat threat) throws Exception {
    assertThat(threat.instruments()).isNotBlank();
    assertThat(threat.tests().isEmpty() && threat.remark().isBlank()).isFalse();
    int numbered = 0;
    for (String test : threat.tests()) {
      String name = test.replaceFirst("#.*", "");
      Class<?> tests = Class.forName("chinelog." + name);
      if (test.contains("#")) {
        String method = test.substring(test.indexOf('#') + 1);
        assertThat(Stream.of(tests.getDeclaredMethods()).map(m -> m.getName())).contains(method);
      }
      if (NUMBERED.contains(name)) {
        String source = Files.readString(TESTS.resolve(name.replace('.', '/') + ".java"));
        numbered += Pattern.compile('"' + threat.number() + "[\":]").matcher(source).find() ? 1 : 0;
      } else {
        numbered++;
      }
    }
    assertThat(numbered).as("tests of its number").isEqualTo(threat.tests().size());
  }
}
