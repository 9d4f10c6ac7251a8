package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** {@code reckon} as its user drives it. */
@Timeout(60)
class ReckonCommandTest {

  @TempDir private Path folder;

  private TinyLog log() {
    return TinyLog.in(folder.resolve("merrow"));
  }

  @Test
  void allFactsStandInATableOfNameValueAndTitle() {
    Said said = log().run("reckon");
    assertThat(said.status()).isZero();
    assertThat(said.err()).isEmpty();
    assertThat(said.out().lines())
        .anyMatch(l -> l.matches("full\\.loa +11\\.200 m ± 0\\.005 m  Length over all"))
        .anyMatch(l -> l.matches("hull\\.loa +700\\.00 mm ± 0\\.32 mm  Hull loa.*"))
        .anyMatch(l -> l.matches("hours\\.total +3 h 30 min  .*"))
        .anyMatch(l -> l.matches("cost\\.total +£2\\.16  .*"));
  }

  @Test
  void theBeginningOfANameChoosesSeveral() {
    Said said = log().run("reckon", "hours");
    assertThat(said.status()).isZero();
    assertThat(said.out().lines()).isNotEmpty().allMatch(l -> l.startsWith("hours."));
    assertThat(log().run("reckon", "hours.").out()).isEqualTo(said.out());
  }

  @Test
  void numbersInNamesAreInTheirOrder() {
    TinyLog log = log();
    log.write("facts.yaml", "mould.m_10: 10 mm\nmould.m_2: 2 mm\nmould.m_1: 1 mm\n");
    assertThat(log.run("reckon", "mould").out().lines().map(l -> l.split(" ")[0]))
        .containsExactly("mould.m_1", "mould.m_2", "mould.m_10");
  }

  @Test
  void oneFactIsToldStepByStepDownToWhereItWasWritten() {
    Said said = log().run("reckon", "hull.loa");
    assertThat(said.status()).isZero();
    assertThat(said.out())
        .startsWith("Hull loa:\nhull.loa = full.loa ÷ scale = 700.00 mm ± 0.32 mm")
        .containsPattern("(?m)^├─ full\\.loa = 11\\.200 m ± 0\\.005 m +stated, facts\\.yaml:1:1")
        .containsPattern("(?m)^└─ scale = 16 +stated, log\\.yaml:3:8");
  }

  @Test
  void csvIsReadBackByALibraryWithTheSameFigures() throws IOException {
    Said said = log().run("reckon", "--as", "csv");
    assertThat(said.status()).isZero();
    List<CSVRecord> rows =
        CSVFormat.RFC4180
            .builder()
            .setHeader()
            .setSkipHeaderRecord(true)
            .get()
            .parse(new StringReader(said.out()))
            .getRecords();
    CSVRecord hull =
        rows.stream().filter(r -> r.get("name").equals("hull.loa")).findFirst().orElseThrow();
    // 11.20 m and 5 mm over 16.
    assertThat(hull.toMap())
        .containsEntry("value", "0.7")
        .containsEntry("unit", "m")
        .containsEntry("tolerance", "0.0003125")
        .containsEntry("origin", "reckoned")
        .containsEntry("formula", "full.loa / scale")
        .containsEntry("inputs", "full.loa scale")
        .containsEntry("place", "facts.yaml:2:1");
  }

  @Test
  void jsonOfOneFactIsAnArrayOfOne() {
    Said said = log().run("reckon", "hull.loa", "--as", "json");
    assertThat(said.status()).isZero();
    assertThat(said.out())
        .startsWith("[\n  {\"name\": \"hull.loa\"")
        .contains("\"value\": 0.7, \"unit\": \"m\", \"tolerance\": 0.0003125")
        .contains("\"inputs\": [\"full.loa\", \"scale\"]", "\"entry\": null")
        .endsWith("}\n]\n");
    assertThat(said.out().split("\"name\":", -1)).hasSize(2);
  }

  @Test
  void anUnknownFactIsWrongUsageWithTheNearestNameAndNothingElse() {
    Said near = log().run("reckon", "hull.lao");
    assertThat(near.status()).isEqualTo(Main.USAGE);
    assertThat(near.out()).isEmpty();
    assertThat(near.err().strip())
        .isEqualTo("This log has no fact “hull.lao”. Did you mean “hull.loa”?");
    assertThat(log().run("reckon", "zzzzzzzzz").err()).contains("Leave the name out");
  }

  @Test
  void theNextBuildIsPricedFromAFile() {
    TinyLog log = priced();
    Said said = log.run("reckon", "--price", log.path("quotation.yaml").toString());
    assertThat(said.err()).isEmpty();
    assertThat(said.status()).isZero();
    // 3.5 h at 30 GBP/h, twice as long; £2.16 of cedar grows as well.
    assertThat(said.out())
        .startsWith("A sister, 1:8\n")
        .containsPattern("Planking +7 h +£210\\.00 +£4\\.32");
    Said csv = log.run("reckon", "--as", "csv", "--price", log.path("quotation.yaml").toString());
    assertThat(csv.status()).isZero();
    assertThat(csv.out().lines().toList()).hasSizeGreaterThan(2).allMatch(l -> l.contains(","));
    Said json = log.run("reckon", "--as", "json", "--price", log.path("quotation.yaml").toString());
    assertThat(json.out()).startsWith("{").endsWith("}\n");
  }

  @Test
  void aPriceFileWithAMistakeIsToldWithItsPlace() {
    TinyLog log = priced().replace("quotation.yaml", "driver: length", "driver: lenght");
    Said said = log.run("reckon", "--price", log.path("quotation.yaml").toString());
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(said.out()).isEmpty();
    assertThat(said.err()).contains("quotation.yaml:2:", "\"lenght\"", "Did you mean \"length\"?");
    Said gone = log.run("reckon", "--price", log.path("gone.yaml").toString());
    assertThat(gone.status()).isEqualTo(Main.PROBLEMS);
    assertThat(gone.err()).contains("gone.yaml");
    Said both = log.run("reckon", "hull.loa", "--price", log.path("quotation.yaml").toString());
    assertThat(both.status()).isEqualTo(Main.USAGE);
    assertThat(both.err()).contains("leave “hull.loa” out");
  }

  private TinyLog priced() {
    return log()
        .replace("log.yaml", "currency: GBP", "currency: GBP\nrate: 30 GBP/h")
        .write(
            "quotation.yaml",
            """
            title: A sister, 1:8
            stages: {planking: {driver: length}}
            built: {length: hull.loa}
            wanted: {length: 1400 mm}
            """);
  }

  @Test
  void factsOfALogWithAMistakeAreToldAllTheSameButTheStatusSaysSo() {
    Said said = log().replace("facts.yaml", "loa / scale", "loa / scael").run("reckon", "full");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(said.err()).contains("Did you mean \"scale\"?");
    assertThat(said.out()).contains("full.loa");
  }

  @Test
  void aFullDiskIsSaidOfTheFolderThatTheCommandWasGiven() {
    assertThat(Main.problem(new IOException("No space left on device"), "my-build"))
        .hasToString(
            "my-build: error: The disk is full. Make room on it, then run the same command again.");
  }
}
