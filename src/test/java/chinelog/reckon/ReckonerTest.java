package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.label.Label;
import chinelog.log.LogFixture;
import chinelog.log.records.Log;
import chinelog.problem.Problem;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The core of the reckoning; all figures are invented for the Merrow. */
class ReckonerTest {

  private static final LocalDate MARCH = LocalDate.of(2026, 3, 14);

  private static Fact fact(Log log, String name) {
    Reckoner.Reckoning reckoning = Reckoner.reckon(log);
    return reckoning
        .facts()
        .find(name)
        .orElseThrow(() -> new AssertionError(name + " is missing: " + reckoning.problems()));
  }

  private static List<String> problems(Log log) {
    return Reckoner.reckon(log).problems().stream().map(Problem::toString).toList();
  }

  @Test
  void aFormulaYieldsAFactWithItsInputsAndLabels() throws Exception {
    Log log =
        LogFixture.merrow()
            .scale("16")
            .state("full.loa", "11.20 m ± 5 mm", "lines")
            .state("hull.loa", "full.loa / scale")
            .build();
    Fact loa = fact(log, "hull.loa");
    assertThat(loa.value().in(Unit.METRE)).isEqualTo(LogFixture.quantity("0.7 m ± 0.3125 mm"));
    assertThat(loa.label()).isEqualTo(Label.of("lines"));
    assertThat(loa.inputs()).containsExactly("full.loa", "scale");
    assertThat(loa.origin()).isEqualTo(Origin.RECKONED);
    assertThat(fact(log, "full.loa").origin()).isEqualTo(Origin.STATED);
    assertThat(problems(log)).isEmpty();
  }

  @Test
  void aMisspeltNameIsToldWithTheLikelyOneAndItsPlace() {
    Log log = LogFixture.merrow().state("hull.beam", "212 mm").state("a", "2 * hull.baem").build();
    assertThat(problems(log))
        .containsExactly(
            "facts.yaml:2:8: error: \"a\" needs \"hull.baem\", but there is no such fact."
                + " Did you mean \"hull.beam\"?");
  }

  @Test
  void aCircleIsToldWhole() {
    Log log =
        LogFixture.merrow().state("a", "b + 1").state("b", "c + 1").state("c", "a + 1").build();
    assertThat(problems(log)).singleElement().asString().contains("a → b → c → a");
  }

  @Test
  void aFactReckonedFromItselfIsTold() {
    assertThat(problems(LogFixture.merrow().state("a", "a + 1").build()))
        .singleElement()
        .asString()
        .contains("reckoned from itself");
  }

  @Test
  void dimensionsAreCheckedWhereTheyClash() {
    Log log = LogFixture.merrow().state("a", "1 m + 2 g").build();
    assertThat(problems(log)).singleElement().asString().startsWith("facts.yaml:1:8: error:");
  }

  @Test
  void divisionByZeroIsTold() {
    Log log = LogFixture.merrow().state("a", "0").state("b", "3 / a").build();
    assertThat(problems(log)).singleElement().asString().contains("divides by zero");
  }

  @Test
  void overflowIsTold() {
    Log log = LogFixture.merrow().state("a", "1000000000 ^ 6").state("b", "a ^ 9").build();
    assertThat(problems(log)).singleElement().asString().contains("larger than anything");
  }

  @Test
  void aFormulaThatRestsOnAFaultyOneIsNotToldAgain() {
    Log log = LogFixture.merrow().state("a", "1 / 0").state("b", "a + 1").build();
    assertThat(problems(log)).hasSize(1);
  }

  @Test
  void hoursAddUpByEntryStageAndInAll() throws Exception {
    Log log =
        LogFixture.merrow()
            .stage("drawings", null, null, "6 h")
            .stage("planking", null, null, "18 h", "client")
            .entry("2026-03-14-drawings", MARCH, "drawings", e -> e.worked("2 h 20 min"))
            .entry(
                "2026-03-20-planking",
                MARCH.plusDays(6),
                "planking",
                e -> e.worked("40 min").worked("1 h", "client"))
            .entry("2026-03-21", MARCH.plusDays(7), "", e -> e.worked("15 min"))
            .build();
    assertThat(fact(log, "hours.entry.2026_03_14_drawings").value())
        .isEqualTo(Quantity.of(140, Unit.MINUTE));
    assertThat(fact(log, "hours.stage.planking").value()).isEqualTo(Quantity.of(100, Unit.MINUTE));
    assertThat(fact(log, "hours.stage.planking").label()).isEqualTo(Label.of("client"));
    assertThat(fact(log, "hours.total").value()).isEqualTo(Quantity.of(255, Unit.MINUTE));
    assertThat(fact(log, "plan.hours.total").value().valueIn(Unit.HOUR)).isEqualByComparingTo("24");
    assertThat(fact(log, "hours.week.2026_w12").value()).isEqualTo(Quantity.of(115, Unit.MINUTE));
  }

  @Test
  void theLatestWeighingOfEachPartCounts() {
    Log log =
        LogFixture.merrow()
            .entry("a", MARCH, "", e -> e.weighed("hull", "412 g ± 1 g").weighed("mast", "31.5 g"))
            .entry("b", MARCH.plusDays(9), "", e -> e.weighed("hull", "455 g ± 1 g", "client"))
            .build();
    Facts facts = Reckoner.reckon(log).facts();
    assertThat(fact(log, "mass.hull").value()).isEqualTo(LogFixture.quantity("455 g ± 1 g"));
    assertThat(fact(log, "mass.hull.at_a").value()).isEqualTo(LogFixture.quantity("412 g ± 1 g"));
    assertThat(fact(log, "mass.total").value()).isEqualTo(LogFixture.quantity("486.5 g ± 1 g"));
    assertThat(fact(log, "mass.total").label()).isEqualTo(Label.of("client"));
    assertThat(facts.massGrowth()).extracting(Facts.MassPoint::entry).containsExactly("a", "b");
    assertThat(
            facts.massGrowth().stream()
                .map(p -> facts.byName().get(p.fact()))
                .map(f -> f == null ? null : f.value()))
        .containsExactly(
            LogFixture.quantity("443.5 g ± 1 g"), LogFixture.quantity("486.5 g ± 1 g"));
  }

  @Test
  void aMeasurementStandsBeforeItsPlanAndIsUnderThePlansAgreements() throws Exception {
    Log log =
        LogFixture.merrow()
            .scale("16")
            .state("full.loa", "11.20 m", "lines")
            .state("hull.loa", "full.loa / scale")
            .entry("a", MARCH, "", e -> e.measured("hull.loa", "701 mm"))
            .build();
    assertThat(fact(log, "hull.loa").value()).isEqualTo(LogFixture.quantity("701 mm"));
    assertThat(fact(log, "hull.loa").label()).isEqualTo(Label.of("lines"));
    assertThat(fact(log, "hull.loa.planned").value().in(Unit.MILLIMETRE))
        .isEqualTo(LogFixture.quantity("700 mm"));
  }

  @Test
  void aWrittenFigureThatDisagreesIsToldWithBothValues() {
    Log log =
        LogFixture.merrow()
            .state("hull.loa", "1.19 m")
            .entry(
                "a",
                MARCH,
                "",
                e ->
                    e.says(LogFixture.paragraph("It is ", "hull.loa", "1190 mm"))
                        .says(LogFixture.paragraph("It is ", "hull.loa", ""))
                        .says(LogFixture.paragraph("It is ", "hull.loa", "1.20 m")))
            .build();
    assertThat(problems(log))
        .singleElement()
        .asString()
        .contains("\"1.20 m\" is written")
        .contains("1.19\u202fm");
  }

  @Test
  void anEarlierEntryMayWriteWhatWasMeasuredThen() {
    Log log =
        LogFixture.merrow()
            .entry(
                "a",
                MARCH,
                "",
                e ->
                    e.measured("hull.loa", "705 mm")
                        .says(LogFixture.paragraph("", "hull.loa", "705 mm")))
            .entry("b", MARCH.plusDays(1), "", e -> e.measured("hull.loa", "700 mm"))
            .build();
    assertThat(problems(log)).isEmpty();
  }

  @Test
  void limitsAreHeldWithTheirMarginAndTolerance() {
    Log log =
        LogFixture.merrow()
            .state("hull.loa", "914 mm ± 1 mm")
            .state("hull.beam", "212 mm")
            .limit("length", "hull.loa <= 36 in")
            .limit("beam", "hull.beam < 200 mm")
            .limit("both", "hull.loa + hull.beam <= 2 m")
            .build();
    List<Facts.LimitCheck> limits = Reckoner.reckon(log).facts().limits();
    assertThat(limits)
        .extracting(Facts.LimitCheck::verdict)
        .containsExactly(Facts.Verdict.CLOSE, Facts.Verdict.BROKEN, Facts.Verdict.KEPT);
    assertThat(limits.get(2).fact()).isEqualTo("limit.both");
    assertThat(limits)
        .as("value, bound and margin stand in one row, in the unit of the rule")
        .allMatch(l -> l.value().unit().equals(l.bound().unit()))
        .allMatch(l -> l.margin().unit().equals(l.bound().unit()));
    assertThat(problems(log)).singleElement().asString().contains("reminder").contains("\"beam\"");
  }

  @Test
  void aLimitOnAnUnknownFactIsTold() {
    assertThat(problems(LogFixture.merrow().limit("length", "hull.loa <= 36 in").build()))
        .singleElement()
        .asString()
        .contains("no fact \"hull.loa\"");
  }

  @Test
  void aFactTakenFromASheetIsUnderItsAgreement() {
    Log log =
        LogFixture.merrow()
            .sheet("sheets/lines.pdf", "lines")
            .stateFrom("full.beam", "3.40 m", "sheets/lines.pdf#2")
            .build();
    assertThat(fact(log, "full.beam").label()).isEqualTo(Label.of("lines"));
  }

  @Test
  void aToleranceLargerThanItsValueIsARemark() {
    assertThat(problems(LogFixture.merrow().state("a", "2 mm ± 3 mm").build()))
        .singleElement()
        .asString()
        .contains("reminder");
  }

  @Test
  void hoursAtTheRateAreTheLabour() throws Exception {
    Log log =
        LogFixture.merrow()
            .rate("34 GBP/h", "client")
            .entry("a", MARCH, "", e -> e.worked("2 h 30 min"))
            .build();
    assertThat(fact(log, "labour.total").value()).isEqualByComparingTo(Quantity.parse("85 GBP"));
    assertThat(fact(log, "labour.total").label()).isEqualTo(Label.of("client"));
  }

  @ParameterizedTest
  @CsvSource({"24 AWG, awg(24)", "3 TOP, a count without a unit", "2 CUP, a count without a unit"})
  void aWordThatIsAlsoACurrencyIsNotTakenForMoneyInSilence(String written, String remedy) {
    assertThat(problems(LogFixture.merrow().state("wire", written).build()))
        .singleElement()
        .asString()
        .contains("means money", remedy);
  }

  @Test
  void aDayIsNotAFigure() {
    assertThat(problems(LogFixture.merrow().state("hull.begun", "2026-03-14").build()))
        .singleElement()
        .asString()
        .contains("is a day", "under on:");
  }

  @Test
  void aRateInOtherMoneyIsTold() {
    assertThat(problems(LogFixture.merrow().rate("34 EUR/h").build()))
        .singleElement()
        .asString()
        .contains("not GBP for a time");
  }

  @Test
  void aTemperatureCannotBeMultiplied() {
    assertThat(problems(LogFixture.merrow().state("a", "20 °C * 2").build()))
        .singleElement()
        .asString()
        .contains("cannot be multiplied");
  }

  @Test
  void anUnknownReckoningIsToldWithTheLikelyOne() {
    assertThat(problems(LogFixture.merrow().request("form", "hul-form").build()))
        .singleElement()
        .asString()
        .contains("Did you mean \"hull-form\"?");
  }

  @Test
  void aReckoningYieldsFactsUnderTheAgreementsOfItsInputs() {
    Log log =
        LogFixture.merrow()
            .state("tank.warmth", "15 °C", "client")
            .request("tank", "water", "water", "fresh", "temperature", "tank.warmth")
            .state("x", "1 L * tank.density")
            .build();
    Fact density = fact(log, "tank.density");
    assertThat(density.label()).isEqualTo(Label.of("client"));
    assertThat(density.inputs()).containsExactly("tank.warmth");
    assertThat(density.method()).isNotEmpty();
    assertThat(fact(log, "x").label()).isEqualTo(Label.of("client"));
  }

  @Test
  void aNameThatAReckoningDoesNotYieldIsTold() {
    Log log =
        LogFixture.merrow()
            .request("tank", "water", "water", "fresh", "temperature", "15 °C")
            .state("x", "1 L * tank.densty")
            .build();
    assertThat(problems(log)).singleElement().asString().contains("Did you mean \"tank.density\"?");
  }
}
