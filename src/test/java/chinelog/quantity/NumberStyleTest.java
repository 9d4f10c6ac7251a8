package chinelog.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What readers see; figures invented, rules as {@link NumberStyle} states them. */
class NumberStyleTest {

  private static final NumberStyle UK = new NumberStyle(Locale.UK, 64);

  /** Narrow no-break spaces as plain ones, for the eye. */
  private static String plain(String shown) {
    return shown.replace('\u202f', ' ');
  }

  @ParameterizedTest(name = "{0} is shown as {1}")
  @CsvSource(
      delimiter = ';',
      value = {
        "700 mm; 700 mm",
        "11.20 m; 11.20 m",
        "0.7 m; 0.7 m",
        "12500 kg; 12,500 kg",
        "-3 mm; −3 mm",
        "1.19 m ± 2 mm; 1.190 m ± 0.002 m",
        "412 g ± 1 g; 412 g ± 1 g",
        "412 g ± 1.4 g; 412.0 g ± 1.4 g",
        "37.25 GBP/h; £37.25/h",
        "0.5 GBP/min; £30.00/h",
        "700 mm ± 25 mm; 700 mm ± 25 mm",
        "1 3/16 in; 1 3⁄16 in",
        "1.1875 in; 1 3⁄16 in",
        "0.3 in; 0.3 in",
        "0.010 in; 0.010 in",
        "0.020 in; 0.020 in",
        "0.0154 in ± 0.002 in; 0.015 in ± 0.002 in",
        "-1/2 in; −1⁄2 in",
        "1 3/16 in ± 1/64 in; 1 3⁄16 in ± 1⁄64 in",
        "0.3 in ± 0.001 in; 0.300 in ± 0.001 in",
        "12 1/2 in ± 1/32 in; 12 1⁄2 in ± 1⁄32 in",
        "12 1/2 in ± 0.03 in; 12 1⁄2 in ± 0.03 in",
        "5 ft 3 1/2 in; 5 ft 3 1⁄2 in",
        "1 lb 4 oz; 1 lb 4 oz",
        "2 h 30 min; 2 h 30 min",
        "2.5 h; 2 h 30 min",
        "93.42 h; 93 h 25 min",
        "45 min; 45 min",
        "0 h; 0 h",
        "0 min; 0 min",
        "18 h; 18 h",
        "21.60 GBP; £21.60",
        "34 GBP/h; £34.00/h",
        "1234567.5 GBP; £1,234,567.50",
        "5 %; 5%",
        "12.5 °; 12.5°",
        "160 g/m²; 160 g/m²",
        "23 °C; 23 °C",
        "1026.021 kg/m³; 1026.021 kg/m³",
        "60; 60",
      })
  void whatWasWrittenIsShownAsWritten(String written, String shown) throws Exception {
    assertThat(plain(UK.show(Quantity.parse(written)))).isEqualTo(shown);
  }

  @Test
  void theSignOfAGroupIsTheLocales() throws Exception {
    NumberStyle german = new NumberStyle(Locale.GERMANY, 0);
    assertThat(plain(german.show(Quantity.parse("12500.5 kg")))).isEqualTo("12.500,5 kg");
    assertThat(plain(german.show(Quantity.parse("5 %")))).isEqualTo("5 %");
    assertThat(german.show(Quantity.parse("21.60 EUR"))).isEqualTo("21,60\u00a0€");
    assertThat(plain(german.show(Quantity.parse("1 3/16 in")))).isEqualTo("1,1875 in");
  }

  @Test
  void moneyHasItsCurrencysDigits() throws Exception {
    assertThat(UK.show(Quantity.parse("1500 JPY"))).isEqualTo("JP¥1,500");
  }

  @Test
  void reckonedFiguresHaveTheDigitsOfTheirInputsAndAUnitThatSuits() throws Exception {
    Quantity sixteen = Quantity.parse("16");
    assertThat(plain(UK.show(Quantity.parse("11.20 m").dividedBy(sixteen)))).isEqualTo("700.0 mm");
    assertThat(plain(UK.show(Quantity.parse("700 mm").times(sixteen)))).isEqualTo("11.2 m");
    assertThat(plain(UK.show(Quantity.parse("412 g").times(sixteen.power(3))))).isEqualTo("1.69 t");
    assertThat(plain(UK.show(Quantity.parse("60.00 m²").dividedBy(Quantity.parse("576")))))
        .isEqualTo("1042 cm²");
    assertThat(plain(UK.show(Quantity.parse("9").dividedBy(Quantity.parse("7")))))
        .isEqualTo("1.286");
  }

  @ParameterizedTest(name = "a seventh of {0} is shown as {1}, and {2} at full size")
  @CsvSource({
    "36.00 mm, 5.14 mm, 82 mm",
    "0.3000 mm, 42.86 µm, 0.69 mm",
    "3.0000 mm, 0.43 mm, 6.9 mm",
    "3000.0 mm, 428.57 mm, 6.857 m",
    "300.00 mm, 42.86 mm, 686 mm"
  })
  void aReckonedLengthIsShownAsFineAsACraftsmanCanUseIt(String seven, String one, String full)
      throws Exception {
    Quantity part = Quantity.parse(seven).dividedBy(Quantity.parse("7.00000"));
    assertThat(plain(UK.show(part))).isEqualTo(one);
    assertThat(plain(UK.showFullSize(part.times(Quantity.parse("16.0000"))))).isEqualTo(full);
  }

  @Test
  void whatSomebodyWroteFinerIsLeftSo() throws Exception {
    assertThat(plain(UK.show(Quantity.parse("0.125 mm")))).isEqualTo("0.125 mm");
    assertThat(plain(UK.showFullSize(Quantity.parse("190.5 mm ± 8 mm")))).isEqualTo("191 mm");
  }

  @Test
  void aSumHasThePlacesOfItsRoughestPart() throws Exception {
    assertThat(plain(UK.show(Quantity.parse("412 g").plus(Quantity.parse("20.54 g")))))
        .isEqualTo("433 g");
  }

  /** Held against the reader of written quantities, which knows nothing of styles. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "1.19 m",
        "700.0 mm ± 0.3 mm",
        "2377 g",
        "2.377 kg",
        "12.345678 kg",
        "52 cm²",
        "0.0123 mm",
        "123456 mm",
        "3/64 in",
        "17 7/64 in",
        "0.010 in",
        "0.3 in",
        "16",
        "0.0625",
        "9 kn",
        "998.2 kg/m³ ± 2 kg/m³"
      })
  void theStepIsThatOfTheLastDigitShown(String text) throws Exception {
    Quantity quantity = Quantity.parse(text);
    String shown = plain(UK.showValue(quantity)).replace(",", "").replace('⁄', '/');
    assertThat(UK.step(quantity)).isEqualByComparingTo(Quantity.lastDigit(shown));
  }

  @Test
  void timeIsShownToTheMinuteAndMoneyToTheHundredth() throws Exception {
    assertThat(UK.step(Quantity.parse("2 h 30 min"))).isEqualByComparingTo(Quantity.parse("1 min"));
    assertThat(UK.step(Quantity.parse("21.60 GBP")))
        .isEqualByComparingTo(Quantity.parse("0.01 GBP"));
  }

  @Test
  void aToleranceIsNeitherLostNorInflatedByAFraction() throws Exception {
    Quantity model = Quantity.parse("12 1/2 in ± 1/32 in").dividedBy(Quantity.parse("48"));
    assertThat(plain(UK.show(model))).isEqualTo("0.2604 in ± 0.0007 in");
  }

  @Test
  void aToleranceIsNeverRoundedDown() throws Exception {
    assertThat(plain(UK.show(Quantity.parse("1204 g ± 24.7 g")))).isEqualTo("1204 g ± 25 g");
    assertThat(plain(UK.show(Quantity.parse("1204 g ± 0.31 g")))).isEqualTo("1204.00 g ± 0.31 g");
    assertThat(plain(UK.show(Quantity.parse("1204 g ± 2 g")))).isEqualTo("1204 g ± 2 g");
  }

  @Test
  void aDivisorThatMayBeZeroIsRefused() throws Exception {
    Quantity length = Quantity.parse("700 mm");
    assertThatThrownBy(() -> length.dividedBy(Quantity.parse("2 mm ± 2 mm")))
        .isInstanceOf(QuantityException.class)
        .hasMessageContaining("may be zero");
  }

  @Test
  void aThirdTakenOffIsNeverShownAsIfExact() throws Exception {
    // Common practice, no source: sanding 1/16 in planking fair takes off a quarter to a third.
    Quantity strip = Quantity.parse("1/16 in");
    Quantity quarterOff = strip.times(Quantity.parse("3")).dividedBy(Quantity.parse("4"));
    Quantity thirdOff = strip.times(Quantity.parse("2")).dividedBy(Quantity.parse("3"));
    assertThat(plain(UK.show(quarterOff))).isEqualTo("3⁄64 in");
    assertThat(plain(UK.show(thirdOff))).isEqualTo("0.04167 in");
    assertThat(plain(withError(thirdOff))).isEqualTo("3⁄64 in less 0.0052 in");
    assertThat(plain(withError(quarterOff))).isEqualTo("3⁄64 in");
  }

  @Test
  void valueAndToleranceCanBeShownApart() throws Exception {
    Quantity q = Quantity.parse("1.19 m ± 2 mm");
    assertThat(plain(UK.showValue(q))).isEqualTo("1.190 m");
    assertThat(plain(UK.showTolerance(q))).isEqualTo("± 0.002 m");
    assertThat(UK.showTolerance(Quantity.parse("1.19 m"))).isEmpty();
  }

  @Test
  void roundingHappensOnceAndTiesGoAwayFromZero() throws Exception {
    // 0.4445 rounds to 0.44 at once, though by way of 0.445 it would come to 0.45.
    Quantity q = Quantity.parse("0.4445 m ± 0.02 m");
    assertThat(plain(UK.showValue(q))).isEqualTo("0.44 m");
    assertThat(plain(UK.showValue(Quantity.parse("-2.5 mm ± 2 mm")))).isEqualTo("−3 mm");
  }

  private static String withError(Quantity quantity) {
    return UK.showWithError(quantity, (a, b) -> a + " less " + b, (a, b) -> a + " and " + b);
  }
}
