package chinelog.reckon.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.quantity.Unit;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FunctionsTest {

  private static Quantity value(String formula) throws QuantityException {
    return Evaluator.evaluate(
        Formula.parse(formula).tree(),
        n -> {
          throw new IllegalArgumentException(n);
        });
  }

  @ParameterizedTest // closed forms
  @CsvSource({
    "sin(30 deg), '', 0.5",
    "cos(60 deg), '', 0.5",
    "tan(45 deg), '', 1",
    "asin(0.5), deg, 30",
    "acos(0.5), deg, 60",
    "atan(1), deg, 45",
    "ln(exp(2)), '', 2",
    "pi * (2 m)^2, m², 12.566370614359172",
    "2.5e-3 * 1e6, '', 2500",
    "1 mi in m, m, 1609.344",
    "70 °F in °C, °C, 21.111111111111111",
    "12 in in mm, mm, 304.8",
    "2 * 3 in + 1 in in mm, mm, 177.8",
    "7.4 V * 2200 mAh, Wh, 16.28",
    "2200 mAh / 3 A, h, 0.73333333333333333",
    "10 m / 2 kn, s, 9.7192224622030238",
    "40 mm * 3000 rpm, m/s, 2",
    "0.1 N·m * 3000 rpm, N·m·rpm, 300",
    "1 kg/L * 2377 cm³, g, 2377",
    "'spread(2, 4, 4, 4, 5, 5, 7, 9)', '', 2.138089935299395"
  })
  void aFormulaHasItsClosedValue(String formula, String unit, double expected) throws Exception {
    assertThat(value(formula).doubleIn(Unit.parse(unit)))
        .isCloseTo(expected, within(1e-12 * Math.max(1, expected)));
  }

  @ParameterizedTest
  @CsvSource({
    "7.4 V * 2200 mAh, Wh",
    "2200 mAh / 3 A, h",
    "10 m / 2 kn, s",
    "24 Wh / 12 V, Ah",
    "12 V * 3 A, W",
    "3 N * 20 cm, N·cm",
    "50 N / 1 mm², N/mm²",
    "1 kg/L * 2 L, kg"
  })
  void unitsThatCancelAreFolded(String formula, String unit) throws Exception {
    assertThat(value(formula).unit().symbol()).isEqualTo(unit);
  }

  @ParameterizedTest
  @CsvSource({
    "sin(0.5), takes an angle",
    "ln(2 mm), takes a plain number",
    "asin(2), has no value",
    "ln(0), has no value",
    "1 mi in g, ''",
    "5 mm in furlong, is not a unit"
  })
  void whatHasNoValueIsToldInWords(String formula, String says) {
    assertThatThrownBy(() -> value(formula)).hasMessageContaining(says);
  }
}
