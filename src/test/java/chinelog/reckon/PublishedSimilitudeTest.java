package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chinelog.log.LogFixture;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Scale and similitude against published values; the source stands beside each. */
class PublishedSimilitudeTest {

  private static final String ITTC =
      "ITTC Recommended Procedure 7.5-02-01-03 Fresh Water and Seawater Properties (rev. 2011)"
          + " Tables 1 and 3";

  private static Quantity reckoned(LogFixture log) {
    Reckoner.Reckoning reckoning = Reckoner.reckon(log.build());
    return reckoning
        .facts()
        .find("x")
        .orElseThrow(() -> new AssertionError(reckoning.problems()))
        .value();
  }

  @ParameterizedTest(name = "{0}: {1} is {2} {3} ({5})")
  @CsvSource({
    "S09, 12.000 m / 24, 500, mm, 0, arithmetic",
    "S10, 60 m² / 24^2, 1041.66666666667, cm², 1e-6, arithmetic",
    "S11, 8000 kg / 24^3 * 999.1026 kg/m³ / 1026.021 kg/m³, 563.520995184309, g, 0.01, " + ITTC,
    "S12, 8000 kg / 24^3, 578.703703703704, g, 0.01, arithmetic",
    "S13, 1 ft / 1/4 in, 48, 1, 0, arithmetic 12/0.25",
    "S14, 10 kn / sqrt(16), 2.5, kn, 0, 'J. A. Fleming, Waves and Ripples in Water, Air and Aether"
        + " (1902), Froude section; the 1/16 model scale is from memory'",
    "S15, 1157 long tons / 16^3, 632.734375, lb, 0.01, Fleming 1902 (displacement 1157 tons)",
    "S16, sqrt(12.5 m / 125 m), 0.316227766016838, 1, 1e-6, 'fluid-mechanics textbook problem (Fox"
        + " & McDonald type), answer 0.316 from memory'",
    "S17, 20 kn / sqrt(9.80665 m/s² * 100 m), 0.3285550444214, 1, 1e-5, definition",
    "A12, 62.5 m² / 20^2, 1562.5, cm², 0, arithmetic",
    "A13, 1.15 m / 1 m * (1.08 m² / 1 m²) * 8, 9.936, 1, 1e-9, 'class description R = L x S x 8"
        + " (metres, m2), club page opened'",
    "A21, 10 / (8 * 1.25 m / 1 m) * 1 m², 1, m², 0, as A13",
    "W20, 1 in * 6 in * 8 ft, 4, board ft, 0, UCUM [bf_i] definition",
    "S22, 1244 mm * 15, 18.66, m, 1e-9, 'university towing-tank lab report (18.66 m waterline,"
        + " 1:15)'",
  })
  void formulasAgree(
      String id, String formula, double expected, String unit, double tolerance, String source)
      throws Exception {
    Quantity x = reckoned(LogFixture.merrow().state("x", formula));
    assertThat(x.doubleIn(Unit.parse(unit)))
        .as(id + " " + source)
        .isCloseTo(expected, within(tolerance));
  }

  @Test
  void aModelAfloatIsPutRightForItsWater() throws Exception {
    // S11 the other way round, with the same source.
    Quantity full =
        reckoned(
            LogFixture.merrow()
                .state("x", "563.520995184309 g * 24^3 * 1026.021 kg/m³ / 999.1026 kg/m³"));
    assertThat(full.doubleIn(Unit.KILOGRAM)).isCloseTo(8000, within(1e-6));
  }

  @ParameterizedTest(name = "{0} at 1:{1} is {2} at full size")
  @CsvSource({
    // S14, S15 and S22 once more, from model to full size.
    "2.5 kn, 16, 10 kn",
    "632.734375 lb, 16, 1157 long tons",
    "1244 mm, 15, 18.66 m",
    // Common practice, no source: at 1:12 an inch stands for a foot.
    "36 in, 12, 36 ft",
    // Exact: 600 in² at 1:12 is 600 ft².
    "600 in², 12, 600 ft²",
  })
  void fullSizeGoesWithTheScale(String model, String scale, String full) throws Exception {
    Quantity counterpart =
        Similitude.findFullSize(Quantity.parse(model), Quantity.parse(scale)).orElseThrow();
    assertThat(counterpart).isEqualByComparingTo(Quantity.parse(full));
    assertThat(Similitude.findModel(counterpart, Quantity.parse(scale)).orElseThrow())
        .isEqualByComparingTo(Quantity.parse(model));
  }

  @Test
  void whatHasNoScaleHasNoCounterpart() throws Exception {
    Quantity scale = Quantity.of(16, Unit.ONE);
    assertThat(Similitude.findFullSize(Quantity.parse("3 h"), scale)).isEmpty();
    assertThat(Similitude.findFullSize(Quantity.parse("21.60 GBP"), scale)).isEmpty();
  }

  @Test
  void aClassRuleIsALimitLikeAnyOther() throws Exception {
    // A13: the rating of 9.936 keeps to 10; A21: with 1.25 m there may be 1 m² and no more.
    Facts facts =
        Reckoner.reckon(
                LogFixture.merrow()
                    .state("hull.lwl", "1.15 m")
                    .state("sail.area", "1.08 m²")
                    .state("other.lwl", "1.25 m")
                    .state("other.area", "1.001 m²")
                    .limit("rating", "hull.lwl / 1 m * sail.area / 1 m² * 8 <= 10")
                    .limit("other", "other.lwl / 1 m * other.area / 1 m² * 8 <= 10")
                    .build())
            .facts();
    assertThat(facts.limits())
        .extracting(Facts.LimitCheck::verdict)
        .containsExactly(Facts.Verdict.KEPT, Facts.Verdict.BROKEN);
    assertThat(facts.limits().get(0).margin().doubleIn(Unit.ONE)).isCloseTo(0.064, within(1e-9));
  }
}
