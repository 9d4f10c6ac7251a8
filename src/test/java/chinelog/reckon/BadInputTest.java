package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.log.LogReader;
import chinelog.problem.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a maker gets wrong in facts.yaml, and what he is told to write instead. */
class BadInputTest {

  @TempDir private Path folder;

  private List<Problem> problems(String facts) throws IOException {
    Files.writeString(folder.resolve("log.yaml"), "title: Building Merrow\nscale: 1:16\n");
    Files.writeString(folder.resolve("facts.yaml"), facts + "\n");
    LogReader.Reading reading =
        new LogReader(LocalDate.of(2026, 6, 30), ZoneOffset.UTC).read(folder);
    List<Problem> all = new ArrayList<>(reading.problems());
    all.addAll(Reckoner.reckon(reading.log()).problems());
    return all;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "a: {is: max(2 mm, 3 mm), title: Most} | 1:9 | is: \"max(2 mm, 3 mm)\"",
        "a: {is: 12,5 mm, title: Strip} | 1:9 | Write a decimal point: 12.5 mm",
        "a: 11,20 m | 1:6 | Write a decimal point, whatever the log's language: 11.20",
        "a: 160 gsm | 1:8 | Write \"g/m²\"",
        "a: 5 kts | 1:6 | Write \"kn\"",
        "a: 2-7-4 | 1:4 | Write 2 ft 7 4/8 in",
        "a: 3 cc | 1:6 | \"cm³\" or \"mL\"",
        "a: 3 hp | 1:6 | 735.5 W",
        "a: 4 sq ft | 1:6 | Write \"ft²\"",
        "a: 20 +0.2/-0.1 mm | 1:8 | 20.05 mm ± 0.15 mm",
        "a: 5 mm +0.2 -0.1 | 1:10 | 5.05 mm ± 0.15 mm",
        "a: 3 Nm | 1:6 | \"N·m\"",
        "a: 2026-03-14 | 1:4 | under on:",
        "a: 24 AWG | 1:1 | awg(24)",
        "a: 24 awg | 1:7 | awg(18)",
        "a: 3 NM | 1:6 | \"nmi\" for a sea mile",
        "a: 10 fl oz | 1:7 | \"US fl oz\"",
        "a: 12 sq.ft | 1:7 | ft²",
        "a: 1 234,5 mm | 1:9 | 1234.5",
        "a: 1.234,5 mm | 1:9 | 1234.5",
        "a: 1’234 mm | 1:4 | Write 1234",
        "a: 4-1/2 in | 1:4 | Write 4 1/2",
        "a: 14/03/2026 | 1:4 | under on:",
        "a: 14.03.2026 | 1:4 | under on:",
        "a: £15 | 1:4 | 15 GBP",
        "a: 15 CAD | 1:1 | Write money in",
        "a: 3 mm x 4 | 1:9 | Write * for times",
        "a: 22:30 | 1:4 | 1 h 30 min",
        "a: tan(90 deg) | 1:4 | Look at the figure",
        "a: (30 °C - 20 °C) in °C | 1:19 | in Δ°C",
        "a: {reckon: hull-form, offsets: o, draught: 3 mm} | 1:33 | Add tables/o.csv with the"
            + " columns station?, x, keel, WL …",
        "a: {reckon: sail, luf: 3 mm} | 1:24 | Did you mean \"luff\"?",
        "a: {reckon: running, speed: 1 m/s} | 1:1 | of the waterline [m]",
      })
  void theRemedyIsWhatToWrite(String facts, String place, String remedy) throws IOException {
    List<Problem> problems = problems(facts);
    assertThat(problems).filteredOn(Problem::isError).hasSize(1);
    Problem problem = problems.stream().filter(Problem::isError).findFirst().orElseThrow();
    if (!facts.contains("reckon:")) {
      assertThat(problem.place()).hasToString("facts.yaml:" + place);
    }
    assertThat(problem.remedy()).contains(remedy);
  }

  @Test
  void aChainWithoutEndIsRefusedInWords() throws IOException {
    StringBuilder facts = new StringBuilder("a0: 1 mm\n");
    for (int i = 1; i < 6000; i++) {
      facts.append("a").append(i).append(": a").append(i - 1).append(" + 1 mm\n");
    }
    assertThat(problems(facts.toString()))
        .singleElement()
        .satisfies(p -> assertThat(p.toString()).contains("rests on more than 5000 facts"));
  }

  @Test
  void whatIsTakenUnsaidIsRecalledWhereItDecidesAFigure() throws IOException {
    assertThat(
            problems(
                "v: {reckon: coating, area: 1 m², spread: 80 g/m²}\n"
                    + "r: {reckon: running, speed: 1 m/s, length: 1 m}"))
        .extracting(Problem::toString)
        .anyMatch(p -> p.contains("\"v\" takes 100 % for \"solids\""))
        .anyMatch(p -> p.contains("\"r\" takes 1.1386 mm²/s"))
        .hasSize(2);
  }
}
