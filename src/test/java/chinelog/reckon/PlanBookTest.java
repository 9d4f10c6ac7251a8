package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chinelog.label.Label;
import chinelog.log.LogFixture;
import chinelog.quantity.Unit;
import chinelog.wording.Catalogue;
import java.time.LocalDate;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Progress against the plan; figures invented, the formulas checked in PublishedEffortTest. */
class PlanBookTest {

  private static final LocalDate DAY = LocalDate.of(2026, 3, 1);

  private static LogFixture log() {
    return LogFixture.merrow()
        .stage("moulds", DAY, DAY.plusDays(9), "10 h")
        .stage("planking", DAY.plusDays(10), DAY.plusDays(19), "20 h")
        .stage("fairing", DAY.plusDays(20), DAY.plusDays(29), "5 h")
        .entry("a", DAY.plusDays(3), "moulds", e -> e.worked("12 h"))
        .entry("b", DAY.plusDays(14), "planking", e -> e.worked("8 h").under("client"));
  }

  private static double value(LogFixture log, String name, Unit unit) throws Exception {
    return Reckoner.reckon(log.build()).facts().find(name).orElseThrow().value().doubleIn(unit);
  }

  @Test
  void aStageLeftBehindHasEarnedAllAndOneBegunHalf() throws Exception {
    assertThat(value(log(), "plan.due", Unit.HOUR)).isCloseTo(20, within(1e-9));
    assertThat(value(log(), "plan.earned", Unit.HOUR)).isCloseTo(20, within(1e-9));
    assertThat(value(log(), "plan.schedule_index", Unit.ONE)).isCloseTo(1, within(1e-9));
    assertThat(value(log(), "plan.cost_index", Unit.ONE)).isCloseTo(1, within(1e-9));
    assertThat(value(log(), "plan.forecast", Unit.HOUR)).isCloseTo(35, within(1e-9));
    assertThat(value(log(), "plan.forecast_days", Unit.parse("d"))).isCloseTo(30, within(1e-9));
  }

  @Test
  void progressIsUnderTheAgreementsOfAllEntriesThatDecideIt() {
    assertThat(Reckoner.reckon(log().build()).facts().find("plan.earned").orElseThrow().label())
        .isEqualTo(Label.of("client"));
  }

  @Test
  void withoutAWholePlanNothingIsForecast() {
    LogFixture log = log().stage("trials");
    assertThat(Reckoner.reckon(log.build()).facts().find("plan.earned")).isEmpty();
  }

  @Test
  void theFinishIsForecastAsADate() {
    LogFixture late =
        LogFixture.merrow()
            .stage("moulds", DAY, DAY.plusDays(9), "10 h")
            .stage("planking", DAY.plusDays(10), DAY.plusDays(19), "20 h")
            .entry("a", DAY.plusDays(19), "moulds", e -> e.worked("12 h"));
    // 30 h are due and 5 h earned: 20 days become 120.
    assertThat(Reckoner.reckon(late.build()).facts().find("plan.forecast_days").orElseThrow())
        .satisfies(
            f ->
                assertThat(Catalogue.of(Facts.MESSAGES, Locale.UK).text(f.title()))
                    .endsWith("forecast for " + DAY.plusDays(119)))
        .satisfies(f -> assertThat(f.value().value()).isEqualByComparingTo("120"));
  }

  @Test
  void theForecastFinishIsADayToComeReckonedFromThePlansFirst() {
    LogFixture late =
        LogFixture.merrow()
            .stage("moulds", DAY, DAY.plusDays(9), "10 h")
            .stage("planking", DAY.plusDays(10), DAY.plusDays(19), "20 h")
            .entry("a", DAY.plusDays(19), "moulds", e -> e.worked("12 h"));
    assertThat(PlanBook.findForecastFinish(late.build(), Reckoner.reckon(late.build()).facts()))
        .contains(DAY.plusDays(119));
    late.entry("b", DAY.plusDays(25), "planking", e -> e.worked("8 h"));
    // All is earned by then: 20 days were planned, and those are over.
    assertThat(PlanBook.findForecastFinish(late.build(), Reckoner.reckon(late.build()).facts()))
        .isEmpty();
  }

  @Test
  void theMassGoesOnGrowingAtItsPace() throws Exception {
    LogFixture log =
        log()
            .budget("mass", "2 kg")
            .entry("c", DAY.plusDays(15), "planking", e -> e.worked("1 h").weighed("hull", "400 g"))
            .entry("d", DAY.plusDays(16), "planking", e -> e.worked("4 h").weighed("keel", "60 g"));
    // 60 g in 4 h; 25 h worked, 20 h earned of 35: 43.75 h in all, 18.75 h to come.
    assertThat(value(log, "growth.pace", Unit.parse("g/h"))).isCloseTo(15, within(1e-9));
    assertThat(value(log, "growth.forecast", Unit.GRAM)).isCloseTo(741.25, within(1e-9));
    assertThat(value(log, "growth.margin", Unit.GRAM)).isCloseTo(1258.75, within(1e-9));
  }

  @Test
  void oneWeighingForecastsNothing() {
    LogFixture log =
        log().entry("c", DAY.plusDays(15), "planking", e -> e.worked("1 h").weighed("hull", "4 g"));
    assertThat(Reckoner.reckon(log.build()).facts().find("growth.forecast")).isEmpty();
  }
}
