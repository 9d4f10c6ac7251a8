package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.label.Label;
import chinelog.log.LogFixture;
import chinelog.log.records.Log;
import chinelog.log.records.Valuation;
import chinelog.problem.Problem;
import chinelog.quantity.Quantity;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Stock and cost; figures invented. */
class StockBookTest {

  private static final LocalDate DAY = LocalDate.of(2026, 3, 10);

  private static List<String> problems(Log log) {
    return Reckoner.reckon(log).problems().stream().map(Problem::toString).toList();
  }

  private static Quantity value(Log log, String name) {
    return Reckoner.reckon(log).facts().find(name).orElseThrow().value();
  }

  @Test
  void theCostOfAUseIsItsShareOfTheLot() throws Exception {
    Log log =
        LogFixture.merrow()
            .stage("planking")
            .lot("lime_strip", "60", "21.60 GBP", DAY)
            .entry("a", DAY.plusDays(1), "planking", e -> e.used("lime_strip", "7"))
            .build();
    assertThat(value(log, "cost.entry.a")).isEqualByComparingTo(Quantity.parse("2.52 GBP"));
    assertThat(value(log, "cost.stage.planking")).isEqualByComparingTo(Quantity.parse("2.52 GBP"));
    assertThat(value(log, "stock.lime_strip.left")).isEqualByComparingTo(Quantity.parse("53"));
    assertThat(problems(log)).isEmpty();
  }

  @Test
  void amountsMayBeInAnotherUnitThanTheLot() throws Exception {
    Log log =
        LogFixture.merrow()
            .lot("cloth", "2 m²", "18 GBP", DAY)
            .entry("a", DAY, "", e -> e.used("cloth", "2500 cm²").used("cloth", "0.25 m²"))
            .build();
    assertThat(value(log, "cost.total")).isEqualByComparingTo(Quantity.parse("4.50 GBP"));
    assertThat(Reckoner.reckon(log).facts().uses())
        .extracting(Facts.UseCost::amountFact)
        .containsExactly("stock.cloth.used.a", "stock.cloth.used.a.2");
  }

  @Test
  void thirdsOfALotUseItUpWhole() {
    Log log =
        LogFixture.merrow()
            .lot("resin", "1 L", "10 GBP", DAY)
            .entry("a", DAY, "", e -> e.used("resin", "1/3 L"))
            .entry("b", DAY, "", e -> e.used("resin", "1/3 L"))
            .entry("c", DAY, "", e -> e.used("resin", "1/3 L"))
            .build();
    assertThat(problems(log)).isEmpty();
  }

  @Test
  void whatWasNeverBoughtIsAskedAbout() {
    Log log =
        LogFixture.merrow()
            .lot("lime_strip", "60", "21.60 GBP", DAY)
            .entry("a", DAY.plusDays(1), "", e -> e.used("lime_strip", "61"))
            .build();
    assertThat(problems(log))
        .singleElement()
        .asString()
        .startsWith("entries/a.md:4:3: question:")
        .contains("61 are used, and of that stock.yaml has no lot for 1.");
  }

  @Test
  void aMaterialMisspeltIsToldWithTheLikelyOne() {
    Log log =
        LogFixture.merrow()
            .lot("lime_strip", "60", null, DAY)
            .entry("a", DAY, "", e -> e.used("lime_stirp", "1"))
            .build();
    assertThat(problems(log)).singleElement().asString().contains("Did you mean \"lime_strip\"?");
  }

  @Test
  void aPriceInAnotherCurrencyIsTold() {
    Log log = LogFixture.merrow().lot("lime_strip", "60", "25 EUR", DAY).build();
    assertThat(problems(log)).singleElement().asString().contains("in EUR").contains("GBP");
  }

  @Test
  void aUseBeforeThePurchaseIsARemark() {
    Log log =
        LogFixture.merrow()
            .lot("lime_strip", "60", "21.60 GBP", DAY)
            .entry("a", DAY.minusDays(1), "", e -> e.used("lime_strip", "1"))
            .build();
    assertThat(problems(log)).singleElement().asString().contains("reminder");
  }

  @Test
  void whatALotIsUnderSpreadsToAllThatIsMadeOfIt() {
    Log log =
        LogFixture.merrow()
            .lot("lime_strip", "60", "21.60 GBP", DAY, "client")
            .entry("a", DAY, "", e -> e.used("lime_strip", "1", "lines"))
            .build();
    Facts facts = Reckoner.reckon(log).facts();
    assertThat(facts.find("stock.lime_strip.left").orElseThrow().label())
        .isEqualTo(Label.of("client", "lines"));
    assertThat(facts.find("cost.total").orElseThrow().label())
        .isEqualTo(Label.of("client", "lines"));
  }

  @Test
  void aLotWithoutAPriceLeavesTheCostUnknown() {
    Log log =
        LogFixture.merrow()
            .lot("lime_strip", "60", null, DAY)
            .entry("a", DAY, "", e -> e.used("lime_strip", "1"))
            .build();
    assertThat(Reckoner.reckon(log).facts().find("cost.total")).isEmpty();
    assertThat(Reckoner.reckon(log).facts().find("stock.lime_strip.cost")).isEmpty();
  }

  @Test
  void atTheAverageEveryPriceSoFarCounts() throws Exception {
    Log log =
        LogFixture.merrow()
            .valuation(Valuation.AVERAGE)
            .lot("resin", "1 kg", "20 GBP", DAY)
            .lot("resin", "500 g", "16 GBP", DAY.plusDays(5), "client")
            .entry("a", DAY.plusDays(1), "", e -> e.used("resin", "500 g"))
            .entry("b", DAY.plusDays(6), "", e -> e.used("resin", "100 g"))
            .build();
    Facts facts = Reckoner.reckon(log).facts();
    // 500 g at 20 GBP/kg are 10 GBP; with 16 GBP for as much again, 1 kg is worth 26 GBP.
    assertThat(facts.find("cost.entry.a").orElseThrow().value())
        .isEqualByComparingTo(Quantity.parse("10 GBP"));
    Fact second = facts.find("cost.use.resin.b").orElseThrow();
    assertThat(second.value()).isEqualByComparingTo(Quantity.parse("2.60 GBP"));
    assertThat(second.inputs()).containsExactly("stock.resin.average_2", "stock.resin.used.b");
    assertThat(second.label()).isEqualTo(Label.of("client"));
    assertThat(facts.find("stock.resin.worth").orElseThrow().value())
        .isEqualByComparingTo(Quantity.parse("23.40 GBP"));
    assertThat(problems(log)).isEmpty();
  }

  @Test
  void atTheAverageALotWithoutAPriceLeavesTheCostUnknownFromThenOn() {
    Log log =
        LogFixture.merrow()
            .valuation(Valuation.AVERAGE)
            .lot("resin", "1 kg", "20 GBP", DAY)
            .lot("resin", "500 g", null, DAY.plusDays(5))
            .entry("a", DAY.plusDays(1), "", e -> e.used("resin", "500 g"))
            .entry("b", DAY.plusDays(6), "", e -> e.used("resin", "100 g"))
            .build();
    Facts facts = Reckoner.reckon(log).facts();
    assertThat(facts.find("cost.entry.a")).isPresent();
    assertThat(facts.find("cost.entry.b")).isEmpty();
    assertThat(facts.find("stock.resin.cost")).isEmpty();
  }

  @Test
  void atTheAverageTooMuchIsTooMuchAndEarlyIsEarly() {
    LogFixture log =
        LogFixture.merrow()
            .valuation(Valuation.AVERAGE)
            .lot("resin", "1 kg", "20 GBP", DAY)
            .lot("resin", "1 kg", "20 GBP", DAY.plusDays(5));
    assertThat(problems(log.entry("a", DAY, "", e -> e.used("resin", "1.5 kg")).build()))
        .singleElement()
        .asString()
        .contains("reminder", "before it was bought");
    assertThat(problems(log.entry("b", DAY, "", e -> e.used("resin", "0.6 kg")).build()))
        .anySatisfy(p -> assertThat(p).contains("question", "no lot for 0.1 kg"));
  }

  @Test
  void whatWasWastedIsAShareOfWhatWasUsed() throws Exception {
    Log log =
        LogFixture.merrow()
            .lot("lime_strip", "60", "21.60 GBP", DAY)
            .entry("a", DAY, "", e -> e.used("lime_strip", "15").usedAt("lime_strip", "5", "Waste"))
            .build();
    assertThat(value(log, "stock.lime_strip.wasted")).isEqualByComparingTo(Quantity.parse("5"));
    assertThat(value(log, "stock.lime_strip.wastage")).isEqualByComparingTo(Quantity.parse("0.25"));
    assertThat(value(log, "stock.lime_strip.left")).isEqualByComparingTo(Quantity.parse("40"));
  }
}
