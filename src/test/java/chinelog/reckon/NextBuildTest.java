package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.label.Label;
import chinelog.log.LogFixture;
import chinelog.log.PriceReader;
import chinelog.log.records.Log;
import chinelog.log.records.PricePlan;
import chinelog.problem.Problem;
import chinelog.quantity.Quantity;
import chinelog.reckon.trade.Quotation;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A price from a log's own hours and material; all figures are invented. */
class NextBuildTest {

  private static final LocalDate DAY = LocalDate.of(2026, 3, 10);

  @TempDir private Path folder = Path.of("");

  private static LogFixture log() {
    return LogFixture.merrow()
        .stage("drawings")
        .stage("planking")
        .stage("trials")
        .state("hull.loa", "60 cm ± 1 mm", "lines")
        .lot("lime_strip", "60", "30 GBP", DAY)
        .entry("a", DAY, "drawings", e -> e.worked("2 h"))
        .entry("b", DAY, "planking", e -> e.worked("9 h").used("lime_strip", "20"))
        .entry("c", DAY.plusDays(1), "planking", e -> e.worked("9 h").used("lime_strip", "30"))
        .entry("d", DAY.plusDays(2), "trials", e -> e.worked("1 h 30 min"));
  }

  private NextBuild.Priced price(LogFixture fixture, String plan) throws IOException {
    Log log = fixture.build();
    Path file = Files.writeString(folder.resolve("quotation.yaml"), plan);
    PriceReader.Reading reading = PriceReader.read(file, log, DAY.plusYears(1));
    PricePlan read = reading.plan();
    assertThat(reading.problems()).isEmpty();
    return NextBuild.price(Objects.requireNonNull(read), log, Reckoner.reckon(log).facts());
  }

  private static Quotation quotation(NextBuild.Priced priced) {
    assertThat(priced.problems()).isEmpty();
    return Objects.requireNonNull(priced.quotation());
  }

  private static final String PLAN =
      """
      title: A second Merrow, 900 mm long
      stages:
        drawings: fixed
        planking: {driver: length, low: 80 %, high: 150 %}
      wanted: {length: 900 mm}
      margin: 20 %
      """;

  @Test
  void thePriceRestsOnTheHoursAndMaterialOfThisBuild() throws Exception {
    NextBuild.Priced priced = price(log().rate("30 GBP/h", "client"), PLAN);
    Quotation quotation = quotation(priced);
    // 18 h × 1.5 = 27 h; (0.8 + 4 + 1.5)/6 of it is 28.35 h. 50 strips at 0.50, half as many again.
    assertThat(quotation.lines().get(1).labour()).isEqualTo(Quantity.parse("850.50 GBP"));
    assertThat(quotation.lines().get(1).material()).isEqualTo(Quantity.parse("37.50 GBP"));
    // 60 + 850.50 + 37.50 is 948; over 0.8 it is 1185.
    assertThat(quotation.total()).isEqualTo(Quantity.parse("1185.00 GBP"));
    assertThat(priced.notes()).containsExactly("Not priced: Trials.");
    assertThat(priced.label()).isEqualTo(Label.of("client", "lines"));
  }

  @Test
  void thePageFitsASheetAndSaysWhatItRestsOn() throws Exception {
    NextBuild.Priced priced = price(log().rate("30 GBP/h", "client"), PLAN);
    String page = QuotationWriter.page(quotation(priced), priced, log().build());
    assertThat(page.lines()).hasSizeLessThan(66).allMatch(l -> l.length() <= 78);
    assertThat(page)
        .contains("A second Merrow, 900 mm long", "£1,185.00", "18 h × 1.5 by length")
        .contains("The length was 600 mm and will be 900 mm")
        .contains("Not priced: Trials.", "(client, lines)");
  }

  @Test
  void otherProgramsGetTheSameFigures() throws Exception {
    NextBuild.Priced priced = price(log().rate("30 GBP/h"), PLAN);
    assertThat(QuotationWriter.csv(quotation(priced)))
        .startsWith("item,title,hours,spread,labour,material,amount,currency,basis\n")
        .contains(
            "stage,Planking,28.35,3.15,850.50,37.50,,GBP,18 h × 1.5 by length × 1.05 by three points\n")
        .contains("\ntotal,,,,,,1185.00,GBP,\n");
    assertThat(QuotationWriter.json(quotation(priced), priced))
        .contains("\"total\": 1185.00")
        .contains("\"under\": [\"lines\"]");
  }

  @Test
  void theRateOfThePlanGoesBeforeTheLogs() throws Exception {
    NextBuild.Priced priced =
        price(log().rate("30 GBP/h"), "rate: 40 GBP/h\nstages: {drawings: fixed}\n");
    assertThat(quotation(priced).total()).isEqualTo(Quantity.parse("80.00 GBP"));
  }

  private void refuses(LogFixture log, String plan, String at, String words) throws IOException {
    NextBuild.Priced priced = price(log, plan);
    assertThat(priced.quotation()).isNull();
    assertThat(priced.problems())
        .filteredOn(Problem::isError)
        .singleElement()
        .asString()
        .startsWith("quotation.yaml:" + at + ": error:")
        .contains(words);
  }

  @Test
  void whatIsMissingIsAskedForWhereItBelongs() throws IOException {
    refuses(log(), "stages: {drawings: fixed}\n", "1:1", "what an hour costs");
    LogFixture paid = log().rate("30 GBP/h");
    refuses(paid, "stages: {planking: count}\nwanted: {count: 3}\n", "2:9", "count of both builds");
    refuses(paid, "stages: {planking: length}\n", "1:1", "length of both builds");
    refuses(
        paid,
        "stages: {planking: length}\nbuilt: {length: hull.lao}\nwanted: {length: 1 m}\n",
        "2:17",
        "Did you mean \"hull.loa\"?");
    refuses(
        paid, "stages: {planking: length}\nwanted: {length: 3 kg}\n", "2:9", "units of the same");
    refuses(paid, "stages: {planking: length}\nwanted: {length: 0 m}\n", "2:9", "not above zero");
    refuses(paid, "margin: 100 %\nstages: {drawings: fixed}\n", "1:9", "leaves nothing");
    refuses(paid, "wastage: 100 %\nstages: {drawings: fixed}\n", "1:10", "leaves nothing");
    refuses(paid, "learning: 120 %\nstages: {drawings: fixed}\n", "1:11", "makes no sense");
    refuses(paid, "tax: -1 %\nstages: {drawings: fixed}\n", "1:6", "less than nothing");
    refuses(
        paid.stage("rigging"), "stages: {rigging: fixed}\n", "1:10", "No hours are written down");
    refuses(
        paid,
        "stages: {drawings: {driver: fixed, low: 110 %}}\n",
        "1:9",
        "do not lie about the likely one");
  }
}
