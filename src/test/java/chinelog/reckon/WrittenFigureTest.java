package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.quantity.Quantity;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WrittenFigureTest {

  @ParameterizedTest(name = "\"{0}\" beside {1}: {2}")
  @CsvSource(
      delimiter = ';',
      value = {
        "1.19 m; 1190 mm; true",
        "1.19 m; 1194 mm; true",
        "1.19 m; 1195 mm; true",
        "1.19 m; 1196 mm; false",
        "27 9/16 in; 700 mm; true",
        "27 1/2 in; 700 mm; true",
        "27 1/4 in; 700 mm; false",
        "700 mm; 703 mm ± 5 mm; true",
        "93.4 h; 5605 min; true",
        "93 h 25 min; 5605 min; true",
        "£21.60; 21.60 GBP; true",
        "£1,021.60; 1021.60 GBP; true",
        "21.60 GBP; 21.61 GBP; false",
        "3 g; 3 mm; false",
        "60; 60; true",
      })
  void aFigureAgreesWithinHalfOfItsLastDigit(String written, String actual, boolean agrees)
      throws Exception {
    assertThat(WrittenFigure.parse(written, Locale.UK, "GBP").agrees(Quantity.parse(actual)))
        .isEqualTo(agrees);
  }

  @ParameterizedTest(name = "\"{0}\" in German beside {1}")
  @CsvSource(
      delimiter = ';',
      value = {"1,19 m; 1190 mm", "12.500 kg; 12500 kg", "21,60 €; 21.60 EUR"})
  void aFigureMayBeWrittenAsTheLanguageDoes(String written, String actual) throws Exception {
    assertThat(WrittenFigure.parse(written, Locale.GERMANY, "EUR").agrees(Quantity.parse(actual)))
        .isTrue();
  }

  @ParameterizedTest(name = "\"{0}\" is a figure: {1}")
  @CsvSource({"1.19 m, true", "her length, false", "½ in, true"})
  void wordsAreNoFigure(String text, boolean figure) {
    assertThat(WrittenFigure.isFigure(text)).isEqualTo(figure);
  }
}
