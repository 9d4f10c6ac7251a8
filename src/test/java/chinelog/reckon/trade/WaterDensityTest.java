package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** ITTC Recommended Procedure 7.5-02-01-03 (rev. 2011), tables 1 and 3. */
class WaterDensityTest {

  private static double density(String water, String temperature) throws TradeException {
    return Given.the("water")
        .word("water", water)
        .quantity("temperature", temperature)
        .in("kg/m³", "density");
  }

  @Test // S01, S03 (table 3); S05, S07 (table 1)
  void theDensitiesAreTheTables() throws Exception {
    assertThat(density("sea", "15 °C")).isCloseTo(1026.021, within(1e-4));
    assertThat(density("sea", "10 °C")).isCloseTo(1027.0, within(1e-4));
    assertThat(density("fresh", "15 °C")).isCloseTo(999.1026, within(0.005));
    assertThat(density("fresh", "10 °C")).isCloseTo(999.7026, within(0.005));
  }

  @Test // S08
  void seaIsHeavierThanFreshByItsRatio() throws Exception {
    assertThat(density("sea", "15 °C") / density("fresh", "15 °C"))
        .isCloseTo(1.02694257826974, within(1e-6));
  }

  @Test // one public transcription of the table does not fall between 22 and 24 °C
  void seaWaterGrowsLighterWithEveryDegree() throws Exception {
    for (int t = 1; t < 30; t++) {
      assertThat(density("sea", t + " °C"))
          .isGreaterThan(density("sea", t + ".5 °C"))
          .isGreaterThan(density("sea", t + 1 + " °C"));
    }
  }

  @Test
  void iceAndSteamAreRefused() {
    assertThatThrownBy(() -> density("fresh", "-1 °C"))
        .isInstanceOf(TradeException.class)
        .hasMessageContaining("not known");
  }
}
