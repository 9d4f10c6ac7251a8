package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class RunningTest {

  private static Given hull(String speed, String length) {
    return Given.the("running").quantity("speed", speed).quantity("length", length);
  }

  @Test // S17: definition, 20 kn and 100 m
  void theFroudeNumberIsThatOfItsDefinition() throws Exception {
    assertThat(hull("20 kn", "100 m").number("froude")).isCloseTo(0.3285550444214, within(1e-5));
  }

  @Test // S18: ITTC 7.5-02-02-01 friction line; formula opened in secondary text. Re = 10⁷
  void theFrictionLineGivesThreeThousandthsAtTenMillion() throws Exception {
    Given hull = hull("1 m/s", "10 m").quantity("viscosity", "1 mm²/s");
    assertThat(hull.number("reynolds")).isCloseTo(1e7, within(1e-3));
    assertThat(hull.number("friction")).isCloseTo(0.003, within(1e-12));
  }

  @Test // W. Froude: the same number at 1:16 and a quarter of the speed, by the square root
  void aModelAtItsOwnSpeedHasTheFroudeNumberOfTheFullSize() throws Exception {
    assertThat(hull("2.25 kn", "0.7 m").number("froude"))
        .isCloseTo(hull("9 kn", "11.2 m").number("froude"), within(1e-12));
  }

  @Test
  void whereTheLineSaysNothingItIsNotAsked() {
    assertThatThrownBy(() -> hull("1 cm/s", "10 cm").yields())
        .isInstanceOfSatisfying(
            TradeException.class, e -> assertThat(e.input()).isEqualTo("speed"));
  }
}
