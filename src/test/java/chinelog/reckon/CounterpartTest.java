package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.log.LogFixture;
import chinelog.log.records.Log;
import java.time.LocalDate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which figures of a model mean anything at full size; the log is invented. */
class CounterpartTest {

  private static final LocalDate DAY = LocalDate.of(2026, 4, 18);

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({
    "hull.loa, true",
    "hull.volume, true",
    "waterline.length, true",
    "trial.speed, true",
    "mass.total, true",
    "full.loa, false",
    "trial.full_speed, false",
    "mass.hull, false",
    "hull.shape, false",
    "strip.width, false",
    "glue.mass, false",
    "stock.resin.used, false",
    "scale, false",
  })
  void theVesselHasAFullSizeAndTheWorkshopHasNone(String name, boolean has) {
    Log log =
        LogFixture.merrow()
            .scale("16")
            .state("full.loa", "11.20 m")
            .state("full.lwl", "10.46 m")
            .state("hull.loa", "full.loa / scale")
            .state("waterline.length", "full.lwl / scale")
            .state("hull.volume", "2377 cm³")
            .state("hull.shape", "0.4")
            .state("trial.speed", "1.16 m/s")
            .state("trial.full_speed", "trial.speed * sqrt(scale)")
            .state("strip.width", "1/4 in")
            .state("glue.mass", "20 g")
            .lot("resin", "500 g", "24 GBP", DAY)
            .entry(
                "2026-04-18-weighed",
                DAY,
                "",
                e -> e.weighed("hull", "412 g").used("resin", "20 g"))
            .build();
    Fact fact = Reckoner.reckon(log).facts().find(name).orElseThrow();
    assertThat(Similitude.hasCounterpart(fact, log)).isEqualTo(has);
  }
}
