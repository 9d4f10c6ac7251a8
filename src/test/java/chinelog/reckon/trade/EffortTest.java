package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EffortTest {

  private static Given learning(String first, String rate, int number) {
    return Given.the("learning")
        .quantity("first", first)
        .quantity("rate", rate)
        .quantity("number", String.valueOf(number));
  }

  @Test // T14: diagram-library documentation, three-point example
  void threePointsGiveExpectationAndSpread() throws Exception {
    Given one = Given.the("three-point").table("estimates", "low [d],likely [d],high [d]\n5,8,14");
    assertThat(one.in("d", "expected")).isCloseTo(8.5, within(1e-12));
    assertThat(one.in("d", "spread")).isCloseTo(1.5, within(1e-12));
  }

  @Test // T15: the same, a row of tasks (prints 17.83 and 1.69)
  void tasksOneAfterAnotherAddUp() throws Exception {
    Given row =
        Given.the("three-point")
            .table("estimates", "low [d],likely [d],high [d]\n2,3,5\n5,8,14\n3,4,6\n1,2,3");
    assertThat(row.in("d", "expected")).isCloseTo(17.8333333333333, within(0.005));
    assertThat(row.in("d", "spread")).isCloseTo(1.69148192751537, within(0.005));
  }

  // T17, T18: R package learningCurve vignette (Boehmke; AFIT-R/learningCurve commit 4e7be18)
  @ParameterizedTest
  @CsvSource({
    "80 %, 21.1322507055719",
    "82.5 %, 26.1840141963104",
    "85 %, 32.2364687300026",
    "87.5 %, 39.449418607671",
    "90 %, 48.0024265039074"
  })
  void theHundredAndTwentyFifthTakesAsLongAsPrinted(String rate, double hours) throws Exception {
    assertThat(learning("100 h", rate, 125).in("h", "last")).isCloseTo(hours, within(5e-6));
  }

  @Test // T19, T20: the same vignette, 5201.085 and 4029.559
  void allOfThemTakeAsLongAsPrinted() throws Exception {
    assertThat(learning("100 h", "85 %", 125).in("h", "total"))
        .isCloseTo(5201.08514854749, within(0.001));
    assertThat(learning("100 h", "85 %", 125).word("curve", "wright").in("h", "total"))
        .isCloseTo(4029.55859125032, within(0.001));
  }

  // T21: b = log2(rate), the same vignette
  @ParameterizedTest
  @CsvSource({"80 %, -0.321928094887362", "85 %, -0.234465253637023", "90 %, -0.15200309344505"})
  void theExponentIsTheLogarithmOfTheRate(String rate, double exponent) throws Exception {
    assertThat(learning("1 h", rate, 2).number("exponent")).isCloseTo(exponent, within(5e-8));
  }

  // T22: definition
  @ParameterizedTest
  @CsvSource({"1, 100", "2, 80", "3, 70.210370277856", "4, 64", "8, 51.2"})
  void everyDoublingTakesOffTheSameShare(int number, double hours) throws Exception {
    assertThat(learning("100 h", "80 %", number).in("h", "last")).isCloseTo(hours, within(1e-4));
  }

  @Test
  void estimatesThatDoNotRiseAreRefused() {
    assertThatThrownBy(
            () ->
                Given.the("three-point")
                    .table("estimates", "low [h],likely [h],high [h]\n5,4,14")
                    .yields())
        .isInstanceOf(TradeException.class)
        .hasMessageContaining("do not rise");
  }

  @Test
  void forgettingIsNoLearning() {
    assertThatThrownBy(() -> learning("10 h", "110 %", 2).yields())
        .isInstanceOf(TradeException.class)
        .hasMessageContaining("makes no sense");
  }
}
