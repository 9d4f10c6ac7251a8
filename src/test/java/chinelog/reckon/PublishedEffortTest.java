package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chinelog.log.LogFixture;
import chinelog.log.records.Log;
import chinelog.log.records.Valuation;
import chinelog.quantity.NumberStyle;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Time, effort, money and reading time against published values; the source stands beside each. */
class PublishedEffortTest {

  private static double plain(Quantity ratio) throws Exception {
    return ratio.doubleIn(Unit.ONE);
  }

  @Test
  void whatWasUsedFirstIsWhatWasBoughtFirst() {
    // T26, T27: OpenStax Principles of Accounting vol. 1 ch. 10 (repo
    // openstax/osbooks-principles-accounting-bundle commit 2165bf6, modules m67890, m67891):
    // 150 @ 21 in stock; sell 120; buy 225 @ 27; sell 180; buy 210 @ 33.
    LocalDate day = LocalDate.of(2026, 3, 1);
    Log log =
        LogFixture.merrow()
            .lot("unit", "150", "3150 GBP", null)
            .lot("unit", "225", "6075 GBP", day.plusDays(2))
            .lot("unit", "210", "6930 GBP", day.plusDays(4))
            .entry("a", day.plusDays(1), "", e -> e.used("unit", "120"))
            .entry("b", day.plusDays(3), "", e -> e.used("unit", "180"))
            .build();
    Facts facts = Reckoner.reckon(log).facts();
    assertThat(facts.find("stock.unit.worth").orElseThrow().value().value())
        .as("T26 ending stock")
        .isEqualByComparingTo("8955");
    assertThat(facts.find("cost.total").orElseThrow().value().value())
        .as("T26 cost issued")
        .isEqualByComparingTo("7200");
    assertThat(facts.find("stock.unit.paid").orElseThrow().value().value())
        .as("T27")
        .isEqualByComparingTo("16155");
  }

  @Test
  void whatIsHeldAtOnePriceCostsTheAverage() {
    // T28, T29: the same modules; moving average (the book prints 26.29, 7253 and 8902, rounded).
    LocalDate day = LocalDate.of(2026, 3, 1);
    Log log =
        LogFixture.merrow()
            .valuation(Valuation.AVERAGE)
            .lot("unit", "150", "3150 GBP", null)
            .lot("unit", "225", "6075 GBP", day.plusDays(2))
            .lot("unit", "210", "6930 GBP", day.plusDays(4))
            .entry("a", day.plusDays(1), "", e -> e.used("unit", "120"))
            .entry("b", day.plusDays(3), "", e -> e.used("unit", "180"))
            .build();
    Facts facts = Reckoner.reckon(log).facts();
    assertThat(facts.find("stock.unit.average_2").orElseThrow().value().value().doubleValue())
        .as("T28")
        .isCloseTo(26.2941176470588, within(1e-9));
    assertThat(facts.find("cost.total").orElseThrow().value().value().doubleValue())
        .as("T29 cost issued")
        .isCloseTo(7252.94117647059, within(1e-6));
    assertThat(facts.find("stock.unit.worth").orElseThrow().value().value().doubleValue())
        .as("T29 ending stock")
        .isCloseTo(8902.05882352941, within(1e-6));
  }

  @Test
  void theNightTheClocksGoForwardIsAnHourShorter() {
    // T38: Europe/London 2024-03-31 00:30 to 02:30 is PT1H (java.time, tz database).
    Log log =
        LogFixture.merrow()
            .entry(
                "night",
                LocalDate.of(2024, 3, 31),
                "",
                e -> e.worked(LocalTime.of(0, 30), LocalTime.of(2, 30)))
            .build();
    assertThat(Reckoner.reckon(log).facts().find("hours.total").orElseThrow().value())
        .isEqualTo(Quantity.of(60, Unit.MINUTE));
  }

  @Test
  void durationsAddUp() throws Exception {
    // T40, T41: ISO 8601 and java.time (OpenJDK 17).
    assertThat(Quantity.parse("PT2H15M").plus(Quantity.parse("PT50M")).plus(Quantity.parse("PT7M")))
        .isEqualByComparingTo(Quantity.parse("PT3H12M"));
    assertThat(Quantity.parse("PT59S").plus(Quantity.parse("PT59M")).plus(Quantity.parse("PT23H")))
        .isEqualByComparingTo(Quantity.parse("PT23H59M59S"));
  }

  @Test
  void moneyIsShownRoundedHalfUp() throws Exception {
    // T43: java.math.BigDecimal; the rule here is half-up.
    NumberStyle style = new NumberStyle(Locale.UK, 64);
    assertThat(style.show(Quantity.parse("2.345 GBP"))).isEqualTo("£2.35");
    assertThat(style.show(Quantity.parse("0.125 GBP"))).isEqualTo("£0.13");
  }

  @Test
  void readingTimesAgree() {
    // Brysbaert 2019, abstract at Ghent University repository (biblio.ugent.be/publication/8647789)
    assertThat(Pace.SILENT.minutes(1190)).as("B25").isEqualByComparingTo("5");
    assertThat(Pace.QUICK.minutes(2100)).as("B26").isEqualByComparingTo("7");
    assertThat(Pace.SLOW.minutes(2100)).as("B26").isEqualByComparingTo("12");
    assertThat(Pace.ALOUD.minutes(915)).as("B27").isEqualByComparingTo("5");
    // NCVS rate as quoted on secondary pages.
    assertThat(Pace.SPEAKING.minutes(225)).as("B29").isEqualByComparingTo("1.5");
  }

  @Test
  void wordsAreCountedAsAReaderCountsThem() {
    assertThat(Pace.words("Don't glue twenty-two ribs — 3.5 mm each — at once.")).isEqualTo(9);
    assertThat(Pace.SILENT.wholeMinutes(0)).isEqualTo(1);
    assertThat(Pace.SILENT.minutes(238)).isEqualByComparingTo(BigDecimal.ONE);
  }
}
