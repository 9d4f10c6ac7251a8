package chinelog.reckon.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Plan, trials, cells and screw of a working model. */
class WorkingModelTest {

  /**
   * P. Govan, project risk analysis book and R package PRA (repo paulgovan/PRA, commit 25c62aa):
   * budget 500,000, 75 % due in period 3, 40 % done, costs 290,000 (checks T01 to T08).
   */
  @Test
  void aPublishedProjectStandsAsPublished() throws Exception {
    Given project =
        Given.the("earned-value")
            .table("stages", "stage,planned [h],due,done,worked [h]\nAll,500000,0.5,0.4,290000");
    assertThat(project.number("schedule_index")).isCloseTo(0.8, within(1e-9));
    assertThat(project.number("cost_index")).isCloseTo(0.689655172413793, within(1e-9));
    assertThat(project.in("h", "forecast")).isCloseTo(725000, within(1e-6));
    assertThat(project.in("h", "forecast_as_planned")).isCloseTo(590000, within(1e-6));
    assertThat(project.in("h", "forecast_by_both")).isCloseTo(833750, within(1e-6));
    assertThat(project.in("h", "to_go")).isCloseTo(435000, within(1e-6));
    assertThat(project.number("index_to_go")).isCloseTo(1.42857142857143, within(1e-9));
    assertThat(project.in("h", "variance_at_end")).isCloseTo(-225000, within(1e-6));
  }

  /** Check T11, a project-management tutorial: PV 2.4, EV 1.6, AC 3, BAC 8. */
  @Test
  void aSecondPublishedProjectStandsAsPublished() throws Exception {
    Given project =
        Given.the("earned-value")
            .table("stages", "planned [h],due [%],done [%],worked [h]\n8,30,20,3");
    assertThat(project.number("schedule_index")).isCloseTo(0.666666666666667, within(1e-6));
    assertThat(project.number("cost_index")).isCloseTo(0.533333333333333, within(1e-6));
    assertThat(project.number("index_to_go")).isCloseTo(1.28, within(1e-6));
  }

  @Test // T13: without a cost there is no index, and nothing infinite
  void whatHasCostNothingHasNoIndex() throws Exception {
    assertThat(
            Given.the("earned-value")
                .table("stages", "planned [h],done [%],worked [h]\n100,10,0")
                .yields())
        .extracting(Yield::name)
        .doesNotContain("cost_index", "forecast")
        .contains("forecast_as_planned");
  }

  /** Closed form: a speed of 1.2 m/s against a current that changes as the square of time. */
  @Test
  void aChangingCurrentFallsOutOfFourRuns() throws Exception {
    StringBuilder runs = new StringBuilder("run,time [s]\n");
    for (int i = 0; i < 4; i++) {
      double current = 0.2 - 0.03 * i + 0.01 * i * i;
      runs.append(i)
          .append(',')
          .append(10 / (1.2 + (i % 2 == 0 ? current : -current)))
          .append('\n');
    }
    Given trial = Given.the("runs").table("runs", runs.toString()).quantity("course", "10 m");
    assertThat(trial.in("m/s", "speed")).isCloseTo(1.2, within(1e-9));
  }

  /**
   * Four runs: 8 V = V₁ + 3 V₂ + 3 V₃ + V₄ (E. C. Tupper, Introduction to Naval Architecture,
   * Propulsion, "Determining speed through the water", p. 245; the copy read names no edition).
   */
  @Test
  void fourRunsAreWeighedAsThePrintedRuleHasThem() throws Exception {
    double[] v = {12.4, 9.7, 12.9, 9.1};
    StringBuilder runs = new StringBuilder("run,time [s]\n");
    for (int i = 0; i < 4; i++) {
      runs.append(i).append(',').append(1852 / (v[i] * 1852 / 3600)).append('\n');
    }
    Given trial = Given.the("runs").table("runs", runs.toString()).quantity("course", "1852 m");
    double speed = (v[0] + 3 * v[1] + 3 * v[2] + v[3]) / 8;
    assertThat(trial.in("kn", "speed")).isCloseTo(speed, within(1e-9));
  }

  /** Two runs, 20 km/h with the stream and 10 km/h against it: 15 and 5 (a schoolbook's sum). */
  @Test
  void twoRunsAreTheSchoolbooksSum() throws Exception {
    Given trial = Given.the("runs").table("runs", "time [s]\n180\n360").quantity("course", "1 km");
    assertThat(trial.in("km/h", "speed")).isCloseTo(15, within(1e-9));
    assertThat(trial.in("km/h", "current")).isCloseTo(5, within(1e-9));
  }

  @Test // 10 m in 8 s and back in 10 s: 1.25 and 1 m/s; the mean time would tell 1.111 m/s
  void speedsAreAveragedAndNotTimes() throws Exception {
    Given trial = Given.the("runs").table("runs", "time [s]\n8\n10").quantity("course", "10 m");
    assertThat(trial.in("m/s", "speed")).isCloseTo(1.125, within(1e-12));
    assertThat(trial.in("m/s", "current")).isCloseTo(0.125, within(1e-12));
  }

  @Test // definitions: Q u / I, U Q, U I, n p, 1 - v/(n p), R v / η
  void cellsAndScrewFollowTheirDefinitions() throws Exception {
    Given motor =
        Given.the("motor")
            .quantity("voltage", "7.2 V")
            .quantity("capacity", "3000 mAh")
            .quantity("current", "2.5 A")
            .quantity("usable", "80 %")
            .quantity("turns", "3000 rpm")
            .quantity("pitch", "40 mm")
            .quantity("speed", "1.5 m/s")
            .quantity("slip", "25 %")
            .quantity("pull", "2 N")
            .quantity("efficiency", "40 %");
    assertThat(motor.in("Wh", "energy")).isCloseTo(21.6, within(1e-9));
    assertThat(motor.in("W", "power")).isCloseTo(18, within(1e-9));
    assertThat(motor.in("min", "run_time")).isCloseTo(57.6, within(1e-9));
    assertThat(motor.in("m/s", "pitch_speed")).isCloseTo(2, within(1e-9));
    assertThat(motor.in("%", "slip")).isCloseTo(25, within(1e-9));
    assertThat(motor.in("mm", "pitch_wanted")).isCloseTo(40, within(1e-9));
    assertThat(motor.in("W", "power_wanted")).isCloseTo(7.5, within(1e-9));
  }

  @Test // λ = 16: √16 = 4, 16^3.5 = 16384
  void powerGoesWithTheScaleToThreeAndAHalf() throws Exception {
    Given motor =
        Given.the("motor")
            .quantity("full_power", "163.84 kW")
            .quantity("full_speed", "4 m/s")
            .quantity("scale", "16");
    assertThat(motor.in("W", "scale_power")).isCloseTo(10, within(1e-9));
    assertThat(motor.in("m/s", "scale_speed")).isCloseTo(1, within(1e-9));
  }
}
