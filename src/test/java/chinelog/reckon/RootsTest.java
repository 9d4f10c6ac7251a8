package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chinelog.log.LogFixture;
import java.util.Objects;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * First-order propagation: the spread is the sum of |derivative × spread| over what was written.
 */
class RootsTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "a - a | 0",
        "a / a | 0",
        "2 * a - a | 0.1",
        "a * a | 0.64",
        "a + b - a | 0.2",
        "twice - a | 0.1",
        "(a + b) / (a - b) | 1.72",
        "sqrt(a * a) | 0.1",
        "max(a, b) - a | 0",
        "mean(a, a, a) | 0.1",
        "a + (1 mm ± 0.3 mm) - a | 0.3"
      })
  void aFigureThatGoesInTwiceIsFollowedByItsDerivative(String formula, double spread) {
    LogFixture log =
        LogFixture.merrow()
            .state("a", "3.2 mm ± 0.1 mm")
            .state("b", "2.2 mm ± 0.2 mm")
            .state("twice", "2 * a")
            .state("x", formula);
    Reckoner.Reckoning reckoned = Reckoner.reckon(log.build());
    assertThat(reckoned.problems()).isEmpty();
    assertThat(
            Objects.requireNonNull(reckoned.facts().find("x").orElseThrow().value().tolerance())
                .doubleValue())
        .isCloseTo(spread, within(1e-9));
  }
}
