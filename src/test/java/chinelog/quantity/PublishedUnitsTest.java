package chinelog.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Conversions, fractions and gauges against published values; the source stands beside each. */
class PublishedUnitsTest {

  private static final String UCUM =
      "UCUM ucum-essence.xml v2.2 (2024-06-17), repo ucum-org/ucum commit d060c6d";
  private static final String NIST = "NIST SP 811 (2008 ed.) App. B.8";
  private static final String GNU = "GNU Units 2.22 definitions.units (Debian units 2.22-2)";

  @ParameterizedTest(name = "{0}: {1} is {2} {3} ({4})")
  @CsvSource({
    "U01, 1 in, 25.4, mm, " + UCUM + " [in_i]",
    "U02, 1 ft, 0.3048, m, " + UCUM + " [ft_i]",
    "U03, 1 yd, 0.9144, m, " + UCUM + " [yd_i]",
    "U04, 1 lb, 453.59237, g, " + UCUM + " [lb_av]",
    "U05, 1 oz, 28.349523125, g, " + UCUM + " [oz_av]",
    "U06, 1 US gal, 3.785411784, L, " + UCUM + " [gal_us]",
    "U07, 1 imp gal, 4.54609, L, " + UCUM + " [gal_br]",
    "U08, 1 US fl oz, 29.5735295625, mL, " + UCUM + " [foz_us]",
    "U13, -40 °F, -40, °C, algebra",
    "U16, 1 board ft, 2359.737216, cm³, " + UCUM + " [bf_i]",
  })
  void exactConversionsAreExact(
      String id, String written, BigDecimal expected, String unit, String source) throws Exception {
    assertThat(Quantity.parse(written).valueIn(Unit.parse(unit)))
        .as(id + " " + source)
        .isEqualByComparingTo(expected);
  }

  @ParameterizedTest(name = "{0}: {1} is {2} {3} ({5})")
  @CsvSource({
    "U09, 1 oz/yd², 33.9057474748823, g/m², 1e-9, " + NIST + " prints 0.03390575 kg/m2",
    "U10, 6 oz/yd2, 203.434484849294, g/m2, 5e-6, " + NIST,
    "U11, 1 psi, 6894.75729316836, Pa, 1e-9, " + UCUM + " [psi]; NIST prints 6894.757",
    "U12, 70 °F, 21.1111111111111, °C, 5e-8, " + GNU + " tempF(70)",
    "U15, 1 lb/ft3, 16.0184633739601, kg/m^3, 1e-9, " + GNU,
    "U26, 1 US survey ft, 0.304800609601219, m, 1e-12, " + UCUM + " [ft_us]",
    "U38, 1 kn, 0.514444444444444, m/s, 1e-9, " + UCUM + " [kn_i]; NIST prints 0.5144444",
  })
  void otherConversionsAreAsNearAsTheSource(
      String id, String written, double expected, String unit, double relative, String source)
      throws Exception {
    assertThat(Quantity.parse(written).doubleIn(Unit.parse(unit)))
        .as(id + " " + source)
        .isCloseTo(expected, org.assertj.core.data.Offset.offset(expected * relative));
  }

  @Test
  void aTemperatureDifferenceHasNoOffset() throws Exception {
    // U14, UCUM [degF] (5 K/9): a rise of 18 °F is one of 10 K.
    Quantity rise = Quantity.parse("86 °F").minus(Quantity.parse("68 °F"));
    assertThat(rise.valueIn(Unit.parse("K"))).isEqualByComparingTo("10");
    assertThat(Quantity.parse("18 Δ°F").valueIn(Unit.parse("K"))).isEqualByComparingTo("10");
  }

  @Test
  void theSurveyFootIsNotTheFoot() throws Exception {
    assertThat(Quantity.parse("1 US survey ft")).isNotEqualByComparingTo(Quantity.parse("1 ft"));
  }

  @ParameterizedTest(name = "{0}: {1} is {2} to the nearest 1/64 in ({3})")
  @CsvSource({
    "U17, 10 mm, 25⁄64 in and 0.0031 in, 10/25.4*64 = 25.197",
    "U18, 3 mm, 1⁄8 in less 0.0069 in, 7.559/64 -> 8/64",
    "U19, 0.8 mm, 1⁄32 in and 0.00025 in, 2.016/64",
    "U20, 0.1984375 mm, 1⁄64 in less 0.0078 in, exactly 0.5/64 in: ties go up",
  })
  void millimetresAreShownAsInchFractions(String id, String written, String shown, String source)
      throws Exception {
    NumberStyle style = new NumberStyle(Locale.UK, 64);
    assertThat(
            style
                .showWithError(
                    Quantity.parse(written).in(Unit.INCH),
                    (a, b) -> a + " less " + b,
                    (a, b) -> a + " and " + b)
                .replace('\u202f', ' '))
        .as(id + " " + source)
        .isEqualTo(shown);
  }

  @Test
  void millimetresAreShownAsFeetAndInches() throws Exception {
    // U21: 1234/25.4 = 48.5827 in, arithmetic.
    Quantity length = Quantity.parse("1234 mm").in(Unit.parse("ft in"));
    String shown = new NumberStyle(Locale.UK, 64).show(length);
    assertThat(shown.replace('\u202f', ' ').replace('\u2044', '/')).isEqualTo("≈ 4 ft 0 37/64 in");
  }

  @ParameterizedTest(name = "{0}: {1} {2} is {3} {4} ({6})")
  @CsvSource({
    "U22, awg, 18, 1.02368734283265, mm, 5e-5, " + GNU + " quotes ASTM B258",
    "U23, swg, 20, 0.9144, mm, 1e-9, " + GNU + " brwiregauge(20)=0.036 in",
    "U24, msg, 18, 1.2147298032, mm, 0.0005, " + GNU + " stdgauge(18)",
    "U25, grit, 320, 46.2, µm, 1e-12, " + GNU + " grit_P (FEPA)",
  })
  void gaugesStandForTheirSizes(
      String id, String gauge, int n, double size, String unit, double tolerance, String source)
      throws Exception {
    assertThat(Gauge.find(gauge).orElseThrow().size(n).doubleIn(Unit.parse(unit)))
        .as(id + " " + source)
        .isCloseTo(size, org.assertj.core.data.Offset.offset(tolerance));
  }
}
