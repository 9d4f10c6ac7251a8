package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A slip in a day of an agreement must not end it; the first note of the log is of 25 March. */
@Timeout(60)
class AgreementDaysTest {

  private static final String AGREEMENT =
      "lines: {with: Skerrick Yard, covers: the lines plan, from: 2026-03-02}";

  @TempDir private Path folder;

  @ParameterizedTest
  @CsvSource({
    "2026-03-02, 2026-03-01, before it begins",
    "2026-03-02, 2025-03-02, before it begins",
    "2027-03-02, 2026-12-31, before it begins",
    "2062-03-02, 2027-03-02, before it begins",
    "2026-03-02, 2026-03-24, before the first note",
    "2025-03-02, 2025-12-31, before the first note",
    "2025-03-02, 2026-03-02, before the first note",
    "2016-03-02, 2017-03-02, before the first note",
    "2026-03-02, 2016-03-02, before it begins",
    "2026-03-02, 1926-12-31, before it begins",
    "2026-12-03, 2026-03-12, before it begins",
    "2026-05-06, 2026-05-05, before it begins",
    "2028-02-29, 2028-02-28, before it begins",
    "2206-03-02, 2026-09-30, before it begins",
    "2026-03-02, 2026-03-02, before the first note",
    "2026-03-02, 2026-03-23, before the first note",
    "2025-12-31, 2026-01-01, before the first note",
    "2006-03-02, 2026-03-02, before the first note",
    "2026-01-02, 2026-02-01, before the first note",
    "1999-03-02, 2009-03-02, before the first note"
  })
  void anEndThatCannotBeMeantStops(String from, String until, String why) {
    TinyLog.Said said = check(from, until);
    assertThat(said.err()).containsPattern("log.yaml:\\d+:\\d+: error: .*" + why);
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
  }

  @ParameterizedTest
  @CsvSource({
    "2026-03-02, 2026-03-25",
    "2026-03-02, 2027-03-02",
    "2026-03-02, never",
    "2026-04-02, 2026-04-02"
  })
  void anEndWithinOrAfterTheLogDoesNotStop(String from, String until) {
    assertThat(check(from, until).status()).isEqualTo(Main.DONE);
  }

  private TinyLog.Said check(String from, String until) {
    return TinyLog.in(folder)
        .replace(
            "log.yaml",
            AGREEMENT,
            "lines: {with: Skerrick Yard, from: " + from + ", until: " + until + "}")
        .run("check");
  }
}
