package chinelog.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityTest {

  private static Quantity q(String text) throws QuantityException {
    return Quantity.parse(text);
  }

  @ParameterizedTest(name = "{0} is {1}")
  @CsvSource({
    "1 3/16 in, 1.1875 in",
    "1-3/16 in, 1.1875 in",
    "3/16 in, 0.1875 in",
    "1½ in, 1.5 in",
    "⅜ in, 0.375 in",
    "1 3⁄16 in, 1.1875 in",
    "−3 mm, -3 mm",
    "2 h 30 min, 150 min",
    "2h 30min, 150 min",
    "PT2H30M, 150 min",
    "5 ft 3 1/2 in, 63.5 in",
    "5' 3 1/2\", 63.5 in",
    "5′3″, 63 in",
    "1 lb 4 oz, 20 oz",
    "1 m 190 mm, 1190 mm",
    "160 g/m2, 160 g/m²",
    "9.81 m/s^2, 9.81 m/s²",
    "2 1/s, 2 Hz",
    "3 knots, 3 kn",
    "5 deg, 5 °",
  })
  void oneThingCanBeWrittenInManyWays(String written, String same) throws Exception {
    assertThat(q(written)).isEqualByComparingTo(q(same));
  }

  @ParameterizedTest(name = "{0} is refused at {1}: {2}")
  @CsvSource(
      delimiter = ';',
      value = {
        "12.5 mmm; 5; is not a unit",
        "twelve mm; 0; does not begin with a number",
        "1,190 mm; 1; comma",
        "1/0 in; 0; 0 below its line",
        "3 gal; 2; is not a unit",
        "700 mm ± 2 g; 8; of another kind",
        "700 mm ± -2 mm; 8; negative",
        "2.5 h 30 min; 0; go down in steps",
        "2 h 90 min; 0; go down in steps",
        "2 h 30 mm; 0; go down in steps",
        "1234567890123456789012345678901234567890123 mm; 0; more digits",
        "PT2X; 0; not a duration",
        "3 m^0; 2; is not a unit",
      })
  void whatIsNoQuantityIsRefusedWithItsPlace(String text, int index, String what) {
    QuantityException e = catchThrowableOfType(QuantityException.class, () -> Quantity.parse(text));
    assertThat(e.what()).contains(what);
    assertThat(e.index()).isEqualTo(index);
    assertThat(e.remedy()).endsWith(".");
  }

  @Test
  void anAmbiguousGallonIsAskedAbout() {
    QuantityException e =
        catchThrowableOfType(QuantityException.class, () -> Quantity.parse("3 gal"));
    assertThat(e.remedy()).contains("US gal").contains("imp gal");
  }

  @ParameterizedTest(name = "{0} × {1} is {2}")
  @CsvSource({
    "3 mm, 4 mm, 12 mm²",
    "3 m, 4 mm, 0.012 m²",
    "2 h, 34 GBP/h, 68 GBP",
    "34 GBP/h, 90 min, 51 GBP",
    "160 g/m², 2500 cm², 40 g",
    "5 %, 200 g, 10 g",
    "3 m/s, 2 min, 360 m",
    "2 L/m³, 3, 0.006",
  })
  void productsShowPlainUnits(String a, String b, String product) throws Exception {
    assertThat(q(a).times(q(b))).isEqualTo(q(product));
  }

  @Test
  void quotientsThatCancelArePlainNumbers() throws Exception {
    assertThat(q("11.2 m").dividedBy(q("700 mm"))).isEqualTo(q("16"));
    assertThat(q("21.60 GBP").dividedBy(q("60")).unit().symbol()).isEqualTo("GBP");
    assertThat(q("3 kg").dividedBy(q("2 m³")).unit().symbol()).isEqualTo("kg/m³");
  }

  @Test
  void tolerancesAddAtTheirWorst() throws Exception {
    assertThat(q("10 mm ± 1 mm").plus(q("5 mm ± 0.5 mm"))).isEqualTo(q("15 mm ± 1.5 mm"));
    assertThat(q("10 mm ± 1 mm").minus(q("5 mm ± 0.5 mm"))).isEqualTo(q("5 mm ± 1.5 mm"));
    assertThat(q("10 mm ± 1 mm").times(q("20 mm ± 1 mm"))).isEqualTo(q("200 mm² ± 30 mm²"));
    assertThat(q("10 mm ± 1 mm").dividedBy(q("2 s ± 0.1 s"))).isEqualTo(q("5 mm/s ± 0.75 mm/s"));
    assertThat(q("0 mm ± 1 mm").times(q("20 mm"))).isEqualTo(q("0 mm² ± 20 mm²"));
    assertThat(q("4 m² ± 0.4 m²").root()).isEqualTo(q("2 m ± 0.1 m"));
    assertThat(q("700 mm ± 1 %")).isEqualTo(q("700 mm ± 7 mm"));
    assertThat(q("30 ± 1 %")).isEqualTo(q("30 ± 0.3"));
    assertThat(q("30 deg ± 1 %")).isEqualTo(q("30 deg ± 0.3 deg"));
    assertThat(q("30 % ± 1 %").tolerance()).isEqualByComparingTo("1");
  }

  @Test
  void currenciesDoNotMix() throws Exception {
    Quantity pounds = q("3 GBP");
    assertThatThrownBy(() -> pounds.plus(q("4 EUR")))
        .isInstanceOf(QuantityException.class)
        .hasMessageContaining("do not mix");
    assertThat(q("3 GBP").times(q("2")).unit().isMoney()).isTrue();
    assertThat(q("34 GBP/h").unit().currency()).isEqualTo("GBP");
    assertThat(q("3 EUR").unit().isCompatible(q("3 EGP").unit())).isFalse();
  }

  @Test
  void temperaturesAreReadingsAndTheirDifferencesAreNot() throws Exception {
    assertThat(q("20 °C").plus(q("5 K"))).isEqualByComparingTo(q("25 °C"));
    assertThat(q("25 °C").minus(q("20 °C"))).isEqualTo(q("5 Δ°C"));
    assertThatThrownBy(() -> q("25 °C").minus(q("20 °C")).in(Unit.parse("°F")))
        .isInstanceOf(QuantityException.class)
        .hasMessageContaining("no temperature in °F");
    assertThat(q("68 °F")).isEqualByComparingTo(q("20 °C"));
    assertThat(q("23 °C ± 2 °C").tolerance()).isEqualByComparingTo("2");
    assertThatThrownBy(() -> q("20 °C").plus(q("20 °C"))).isInstanceOf(QuantityException.class);
    assertThatThrownBy(() -> q("20 °C").times(q("2"))).isInstanceOf(ArithmeticException.class);
  }

  @Test
  void absurdSizesAreRefused() throws Exception {
    Quantity large = q("1000000000 m").power(3);
    assertThatThrownBy(() -> large.times(large).times(large))
        .isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(() -> q("2 m").power(10)).isInstanceOf(QuantityException.class);
    assertThatThrownBy(() -> q("2 m").dividedBy(q("0 s"))).isInstanceOf(QuantityException.class);
    assertThatThrownBy(() -> q("2 g").root()).isInstanceOf(QuantityException.class);
  }

  @Test
  void aSumDoesNotDependOnItsOrder() throws Exception {
    Random random = new Random(20260314);
    List<Quantity> parts = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      BigDecimal value = BigDecimal.valueOf(random.nextInt(100000), 2);
      parts.add(Quantity.of(value, random.nextBoolean() ? Unit.MILLIMETRE : Unit.INCH));
    }
    Quantity sum = sum(parts);
    for (int i = 0; i < 20; i++) {
      Collections.shuffle(parts, random);
      assertThat(sum(parts)).isEqualByComparingTo(sum);
    }
  }

  private static Quantity sum(List<Quantity> parts) throws QuantityException {
    Quantity sum = Quantity.of(0, Unit.MILLIMETRE);
    for (Quantity part : parts) {
      sum = sum.plus(part);
    }
    return sum;
  }

  @Test
  void aChangeOfUnitAndBackChangesNothing() throws Exception {
    Random random = new Random(20260315);
    List<String> units = List.of("mm", "m", "in", "ft", "yd", "km", "mil");
    for (int i = 0; i < 500; i++) {
      Quantity start =
          Quantity.of(
              BigDecimal.valueOf(random.nextInt(1, 1_000_000), 3),
              Unit.parse(units.get(random.nextInt(units.size()))));
      Quantity there = start.in(Unit.parse(units.get(random.nextInt(units.size()))));
      BigDecimal back = there.valueIn(start.unit());
      assertThat(back.subtract(start.value()).abs()).isLessThan(start.value().movePointLeft(30));
    }
  }

  @Test
  void everyDigitIsWrittenSoThatItCanBeReadAgain() throws Exception {
    for (String text : List.of("12.5 mm ± 0.2 mm", "63.5 in", "3.25 GBP/m²", "-0.001 kg/m³")) {
      assertThat(q(q(text).toString())).isEqualTo(q(text));
    }
  }

  @Test
  void theLastDigitWrittenHasASize() throws Exception {
    assertThat(Quantity.lastDigit("1.19 m")).isEqualByComparingTo(q("0.01 m"));
    assertThat(Quantity.lastDigit("700 mm")).isEqualByComparingTo(q("1 mm"));
    assertThat(Quantity.lastDigit("1 3/16 in")).isEqualByComparingTo(q("1/16 in"));
    assertThat(Quantity.lastDigit("2 h 30 min")).isEqualByComparingTo(q("1 min"));
  }

  @ParameterizedTest(name = "in \"{0}\" the quantity ends at {1}")
  @CsvSource({
    "12.5 mm + x, 7",
    "12.5 mm/scale, 7",
    "160 g/m² * 3, 8",
    "34 GBP/h*2, 8",
    "11.20 m/16, 7",
    "1 3/16 in, 9",
    "3/16 in * 2, 7",
    "3/4 * 2, 1",
    "2^3/4, 1",
    "2 h 30 min + x, 10",
    "5 mm ± 0.2 mm / 2, 13",
    "16), 2",
    "3 US gal - x, 8",
    "5 %), 3",
    "5 ft 3 1/2 in, 13",
  })
  void aQuantityEndsWhereItsUnitDoes(String text, int end) {
    assertThat(QuantityScanner.end(text, 0)).isEqualTo(end);
  }
}
