package chinelog.log;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.label.Label;
import chinelog.log.records.Log;
import chinelog.log.records.PricePlan;
import chinelog.problem.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PriceReaderTest {

  private static final LocalDate TODAY = LocalDate.of(2026, 6, 1);

  @TempDir private Path folder = Path.of("");

  private PriceReader.Reading read(String text) throws IOException {
    Path file = Files.writeString(folder.resolve("quotation.yaml"), text);
    Log log = LogFixture.merrow().stage("drawings").stage("planking").build();
    return PriceReader.read(file, log, TODAY);
  }

  @Test
  void aPlanIsReadWithWhatItLeavesToUs() throws IOException {
    PricePlan plan =
        Objects.requireNonNull(
            read("""
                    title: A second Merrow
                    stages:
                      drawings: fixed
                      planking: {driver: area, low: 80 %, high: 150 %, learnt: false}
                    built: {length: hull.loa}
                    wanted: {length: 900 mm}
                    margin: {value: 20 %, under: client}
                    """)
                .plan());
    assertThat(plan.stages())
        .extracting(PricePlan.StagePrice::stage)
        .containsExactly("drawings", "planking");
    assertThat(plan.stages().get(0).driver()).isEqualTo(PricePlan.Driver.FIXED);
    assertThat(plan.stages().get(0).learnt()).isTrue();
    assertThat(plan.stages().get(0).high()).isEqualTo(LogFixture.quantity("100 %"));
    assertThat(plan.stages().get(1).learnt()).isFalse();
    assertThat(plan.wanted().get(PricePlan.Driver.LENGTH)).isEqualTo(LogFixture.quantity("900 mm"));
    assertThat(plan.rate()).isNull();
    assertThat(plan.number()).isEqualTo(1);
    assertThat(plan.tax()).isEqualTo(LogFixture.quantity("0 %"));
    assertThat(plan.label()).isEqualTo(Label.of("client"));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "'stages: {planing: area}' | 1:10 | Did you mean \"planking\"?",
        "'stages: {planking: aera}' | 1:20 | Did you mean \"area\"?",
        "'stages: {planking: {driver: area, lwo: 80 %}}' | 1:35 | Did you mean \"low\"?",
        "'stages: {planking: {low: 80 %}}' | 1:20 | \"driver\" is missing",
        "'stages: {planking: area}\nstages: {drawings: fixed}' | 2:1 | a second time",
        "'stages: {planking: area}\nmargn: 20 %' | 2:1 | Did you mean \"margin\"?",
        "'stages: {planking: area}\nmargin: 20 mm' | 2:9 | not the unit of a share",
        "'stages: {planking: area}\nrate: 34 EUR/h' | 2:7 | the log's money is GBP",
        "'stages: {planking: area}\nrate: 34' | 2:7 | no unit",
        "'stages: {planking: area}\nnumber: 1.5' | 2:9 | which build of its kind",
        "'stages: {planking: area}\nnumber: 0' | 2:9 | which build of its kind",
        "'stages: {planking: area}\nwanted: {fixed: 1}' | 2:10 | not a measure of a build",
        "'stages: {planking: area}\nwanted: {length: long}' | 2:18 | ''",
        "'stages: {planking: area}\nbuilt: {length: 700 mn}' | 2:17 | neither a quantity nor",
        "'stages: {planking: area}\nunder: cleint' | 2:8 | Did you mean \"client\"?",
        "'title: A second Merrow' | 1:1 | \"stages\" is missing",
        "'- planking' | 1:1 | where a group of keys belongs",
        "'stages: {planking: &a area}' | 1:20 | gives this value a name",
      })
  void whatIsWrongIsToldAtItsPlace(String text, String at, String words) throws IOException {
    PriceReader.Reading reading = read(text.replace("\\n", "\n"));
    assertThat(reading.plan()).isNull();
    assertThat(reading.problems())
        .filteredOn(Problem::isError)
        .extracting(Problem::toString)
        .anySatisfy(
            p -> assertThat(p).startsWith("quotation.yaml:" + at + ": error:").contains(words));
  }

  @Test
  void anEmptyFileIsTold() throws IOException {
    assertThat(read("# later").problems())
        .singleElement()
        .asString()
        .contains("Nothing is written here");
  }

  @Test
  void aFileThatIsNotThereIsTold() {
    Log log = LogFixture.merrow().stage("planking").build();
    List<Problem> problems =
        PriceReader.read(folder.resolve("nowhere.yaml"), log, TODAY).problems();
    assertThat(problems).singleElement().asString().contains("nowhere.yaml", "cannot be read");
  }
}
