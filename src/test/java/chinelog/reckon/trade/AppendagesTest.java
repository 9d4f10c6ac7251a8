package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Fin and bulb against the published ordinates of their section and closed forms. */
class AppendagesTest {

  private static Given bulb() {
    return Given.the("bulb")
        .quantity("fineness", "6")
        .quantity("density", "11.34 g/cm³")
        .quantity("water_density", "1 g/cm³");
  }

  /**
   * Ordinates of NACA 0012, half-thickness in % of the chord: Abbott and von Doenhoff, Theory of
   * Wing Sections (1959), page 321 (from memory).
   */
  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "5, 3.555",
    "10, 4.683",
    "20, 5.737",
    "30, 6.002",
    "40, 5.803",
    "50, 5.294",
    "60, 4.563",
    "70, 3.664",
    "80, 2.623",
    "90, 1.448",
    "100, 0.126"
  })
  void theBulbHasThePublishedOrdinates(int station, double half) throws Exception {
    Given bulb = bulb().quantity("mass", "1 kg");
    double share = bulb.in("mm", "diameter_" + station) / bulb.in("mm", "diameter") / 2;
    assertThat(share * 12).isCloseTo(half, within(0.0006));
  }

  @Test // closed form: m = n / (1 − ρw/ρ), and the volume found again from the diameters
  void aBulbWeighsInTheWaterWhatIsWanted() throws Exception {
    Given bulb = bulb().quantity("net", "1.8 kg");
    assertThat(bulb.in("kg", "net")).isCloseTo(1.8, within(1e-9));
    assertThat(bulb.in("kg", "mass")).isCloseTo(1.8 / (1 - 1 / 11.34), within(1e-9));
    double l = bulb.in("cm", "length");
    double d = bulb.in("cm", "diameter");
    double sum = 0;
    int n = 200_000;
    for (int i = 0; i < n; i++) {
      double x = (i + 0.5) / n;
      double half =
          5
              * (0.2969 * Math.sqrt(x)
                  - 0.1260 * x
                  - 0.3516 * x * x
                  + 0.2843 * x * x * x
                  - 0.1015 * x * x * x * x)
              * d;
      sum += Math.PI * half * half * l / n;
    }
    assertThat(sum).isCloseTo(bulb.in("cm³", "volume"), within(1e-4));
    assertThat(bulb.in("cm³", "volume") * 11.34).isCloseTo(bulb.in("g", "mass"), within(1e-6));
  }

  /** Closed form: k = 10 (⅔·0.2969 − 0.1260/2 − 0.3516/3 + 0.2843/4 − 0.1015/5). */
  @Test
  void aStraightFinIsItsSectionTimesItsSpan() throws Exception {
    Given fin =
        Given.the("foil")
            .quantity("root", "100 mm")
            .quantity("span", "250 mm")
            .quantity("thickness", "10 %")
            .quantity("x", "500 mm")
            .quantity("density", "2 g/cm³")
            .quantity("water_density", "1 g/cm³");
    double k = 10 * (0.2969 * 2 / 3 - 0.1260 / 2 - 0.3516 / 3 + 0.2843 / 4 - 0.1015 / 5);
    assertThat(fin.in("cm³", "volume")).isCloseTo(k * 0.1 * 100 * 25, within(1e-6));
    assertThat(fin.in("cm²", "area")).isCloseTo(250, within(1e-9));
    assertThat(fin.in("mm", "z")).isCloseTo(-125, within(1e-9));
    assertThat(fin.in("mm", "x")).isCloseTo(500 - 42.04, within(0.01));
    assertThat(fin.in("g", "net")).isCloseTo(fin.in("g", "displacement"), within(1e-9));
    assertThat(fin.in("cm²", "skin")).isBetween(500.0, 520.0);
  }

  /** Closed form of a point: chords a to 0 give V = k τ s a²/3, its centre at s/4. */
  @Test
  void aTaperedFinHasItsCentreWhereAPyramidHas() throws Exception {
    Given fin =
        Given.the("foil")
            .quantity("root", "100 mm")
            .quantity("tip", "0.000001 mm")
            .quantity("span", "400 mm")
            .quantity("thickness", "10 %");
    assertThat(fin.in("mm", "z")).isCloseTo(-100, within(1e-3));
  }
}
