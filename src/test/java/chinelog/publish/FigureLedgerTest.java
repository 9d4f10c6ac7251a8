package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.withhold.PrintedFigure;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FigureLedgerTest {

  private static final PrintedFigure LENGTH =
      new PrintedFigure(
          "public", LocalDate.of(2026, 3, 20), "hull.loa", "27 9\u204416\" \u00b1 1", 0.7, 0.001);

  @TempDir Path folder;

  private FigureLedger ledger(boolean expected) {
    return new FigureLedger(folder.resolve("ledger.csv"), "public", expected);
  }

  @Test
  void whatIsAddedIsReadAndNothingIsAddedTwice() throws IOException {
    ledger(false).add(List.of(LENGTH));
    ledger(true).add(List.of(LENGTH));

    assertThat(ledger(true).read().figures()).containsExactly(LENGTH);
    assertThat(ledger(true).read().problems()).isEmpty();
  }

  @Test
  void aLineThatCannotBeReadStopsThePublishing() throws IOException {
    Files.writeString(folder.resolve("ledger.csv"), "2026-03-20,hull.loa,700 mm\n");

    assertThat(ledger(true).read().problems())
        .singleElement()
        .matches(p -> p.isError() && p.toString().contains("records/public/ledger.csv"));
  }

  @Test
  void aLedgerThatIsMissingThoughAnEditionWentOutStopsThePublishing() throws IOException {
    assertThat(ledger(true).read().problems()).hasSize(1);
    assertThat(ledger(false).read().problems()).isEmpty();
  }

  @Test
  void aFigureThatIsOutAlreadyIsReportedAndReckonedWith() throws IOException {
    Path log = new SmallLog(4, 4).with("facts.yaml", "keel.depth: 31 mm\n").write(folder);
    ByteTwinsTest.publish(log, "public");
    Path facts = log.resolve("facts.yaml");
    Files.writeString(
        facts,
        Files.readString(facts)
                .replace("keel.depth: 31 mm", "keel.depth: {is: 31 mm, under: lines}")
            + "keel.twice: {is: keel.depth * 2, under: lines}\n");

    Outcome outcome =
        new Publisher(
                log,
                ByteTwinsTest.AS_OF,
                ByteTwinsTest.AS_OF.plusDays(1),
                ZoneId.of("UTC"),
                Progress.SILENT)
            .publish(List.of("public"));

    assertThat(outcome.problems())
        .anyMatch(p -> p.toString().contains("is already out since 2026-03-20"))
        .anyMatch(p -> p.isError() && p.toString().contains("keel.twice"));
  }
}
