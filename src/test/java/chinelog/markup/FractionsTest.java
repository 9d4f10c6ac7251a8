package chinelog.markup;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FractionsTest {

  @ParameterizedTest
  @CsvSource({
    "27 9/16 in, 27\u202f9\u204416 in",
    "1/4 × 1/16 in × 36 in, 1\u20444 × 1\u204416 in × 36 in",
    "(1/2), (1\u20442)",
    "1/64. Then, 1\u204464. Then",
  })
  void inchesAreSetAsFractions(String written, String set) {
    assertThat(Fractions.set(written)).isEqualTo(set);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "14/3/2026",
        "3/2026",
        "24/7",
        "60/40",
        "5/4",
        "1.5/2",
        "and/or",
        "1/2.5",
        "12/128/4"
      })
  void nothingElseIs(String written) {
    assertThat(Fractions.set(written)).isEqualTo(written);
  }
}
