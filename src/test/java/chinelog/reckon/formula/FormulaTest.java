package chinelog.reckon.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import chinelog.quantity.NumberStyle;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FormulaTest {

  private static Quantity value(String formula) throws QuantityException {
    return Evaluator.evaluate(
        Formula.parse(formula).tree(),
        name -> {
          throw new AssertionError(name);
        });
  }

  @ParameterizedTest(name = "{0} is {1}")
  @CsvSource(
      delimiter = ';',
      value = {
        "1 + 2 * 3; 7",
        "(1 + 2) * 3; 9",
        "8 - 3 - 2; 3",
        "24 / 4 / 2; 3",
        "-2^2; -4",
        "2^3^2; 512",
        "2^-1; 0.5",
        "2^3/4; 2",
        "9^0.5; 3",
        "2 × 3 ÷ 4 − 1; 0.5",
        "1 3/16 in * 2; 2.375 in",
        "3/16 in + 1/16 in; 1/4 in",
        "160 g/m² * 0.25 m²; 40 g",
        "2 h 30 min + 15 min; 165 min",
        "5 mm ± 0.2 mm * 2; 10 mm ± 0.4 mm",
        "sum(1 mm, 2 mm, 3 mm); 6 mm",
        "mean(1 mm, 2 mm, 6 mm); 3 mm",
        "min(30 mm, 2 cm); 2 cm",
        "max(30 mm, 2 cm); 30 mm",
        "abs(-3 g); 3 g",
        "sqrt(16 mm²); 4 mm",
        "round(2.5 mm); 3 mm",
        "round(-2.5 mm); -3 mm",
        "round(17 mm, 5 mm); 15 mm",
        "ceil(17 mm, 5 mm); 20 mm",
        "floor(17.9 mm); 17 mm",
        "swg(20); 36 mil",
        "nearest(1.7 mm, 1/16 in, 3/32 in, 1/8 in); 1/16 in",
        "nearest(25 mm, 20 mm, 30 mm); 20 mm",
      })
  void formulasFollowTheUsualOrder(String formula, String expected) throws Exception {
    assertThat(value(formula)).isEqualByComparingTo(Quantity.parse(expected));
    assertThat(value(formula).tolerance() == null)
        .isEqualTo(Quantity.parse(expected).tolerance() == null);
  }

  @ParameterizedTest(name = "{0} is refused at {1}: {2}")
  @CsvSource(
      delimiter = ';',
      value = {
        "1 +; 3; ends too early",
        "(1 + 2; 6; not closed",
        "1 2 mm; 2; does not belong",
        "* 3; 0; does not belong",
        "sine(3); 0; not a function",
        "sum(); 0; at least one figure",
        "sqrt(1, 2); 0; one figure",
        "nearest(1 mm); 0; sizes to choose from",
        "3 $ 4; 2; no meaning",
        "1 <= 2; 2; does not belong",
        "3 mmm + 1; 2; is not a unit",
      })
  void whatIsNoFormulaIsRefusedWithItsPlace(String formula, int index, String what) {
    QuantityException e =
        catchThrowableOfType(QuantityException.class, () -> Formula.parse(formula));
    assertThat(e.what()).contains(what);
    assertThat(e.index()).isEqualTo(index);
  }

  @Test
  @Timeout(value = 3, unit = TimeUnit.SECONDS)
  void hostileFormulasAreRefusedInTime() {
    for (String hostile :
        new String[] {
          "(".repeat(3000),
          "-".repeat(3000) + "1",
          "2^".repeat(1500) + "2",
          "1+".repeat(9000) + "1",
          "sum(".repeat(900),
          "9".repeat(3900),
          "1 ".repeat(1900),
        }) {
      assertThat(catchThrowableOfType(QuantityException.class, () -> Formula.parse(hostile)))
          .as(hostile.substring(0, 10))
          .isNotNull();
    }
  }

  @ParameterizedTest(name = "{0} is written {1}")
  @CsvSource(
      delimiter = ';',
      value = {
        "a * (b + c); a × (b + c)",
        "(a * b) + c; a × b + c",
        "a - (b - c); a − (b − c)",
        "a / (b / c); a ÷ (b ÷ c)",
        "a / b / c; a ÷ b ÷ c",
        "(a + b)^2; (a + b)^2",
        "-(a + b); −(a + b)",
        "sum(a, b) * c; (a + b) × c",
        "max(a, b); max(a, b)",
      })
  void formulasAreWrittenWithTheBracketsTheyNeed(String formula, String written) throws Exception {
    NumberStyle style = new NumberStyle(Locale.ROOT, 0);
    assertThat(FormulaWriter.write(Formula.parse(formula).tree(), n -> n, style))
        .isEqualTo(written);
  }
}
