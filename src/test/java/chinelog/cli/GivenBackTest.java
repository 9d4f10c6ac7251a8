package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Released figures that would give back what is withheld: an angle by its sine, a figure by a
 * spread, a cell of a table by the total of its column. Each is told, and not where something more
 * is withheld that hides it.
 */
@Timeout(60)
class GivenBackTest {

  @TempDir private Path folder;

  private TinyLog log(String facts, String released) {
    TinyLog log = TinyLog.empty(folder);
    log.write(
        "log.yaml",
        """
        title: Building Merrow
        subject: Merrow
        language: en-GB
        zone: Europe/London
        currency: GBP
        agreements:
          lines: {with: Skerrick Yard, covers: the lines plan, from: 2026-03-02, until: never}
        readers:
          public: {title: Everybody, party-to: [], gets: [site]}
          workshop: {title: The workshop, party-to: all, gets: [site]}
        releases:
        """);
    for (String name : released.split(" ")) {
      log.write(
          "log.yaml",
          log.read("log.yaml")
              + "  - {fact: "
              + name
              + ", under: lines, for: [public], by: O. Marsden, on: 2026-03-30, words: Tell it}\n");
    }
    log.write("facts.yaml", String.join("\n", List.of(facts.split(" ?; ?"))) + "\n");
    return log.write(TinyLog.NOTE, "---\ntitle: The keel\n---\nA quiet day.\n");
  }

  /** What a withheld figure goes into by a curve, of which some points are released. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "rake.rise: sin(rake.lean) * 900 mm                    | rake.rise",
        "rake.rise: cos(rake.lean) * 900 mm                    | rake.rise",
        "rake.rise: tan(rake.lean) * 900 mm                    | rake.rise",
        "rake.rise: sin(rake.lean); rake.run: cos(rake.lean)   | rake.rise rake.run",
        "rake.rise: exp(sin(rake.lean))                        | rake.rise",
        "rake.rise: ln(tan(rake.lean) * 40)                    | rake.rise",
        "rake.rise: spread(rake.lean, 20 deg, 25 deg)          | rake.rise",
        "rake.rise: sqrt(sin(rake.lean)) + 2                   | rake.rise",
      })
  void aPointOfACurveGivesBackWhatItWasReckonedFrom(String facts, String released) {
    String lean = "rake.lean: {is: 31 deg, title: Lean, under: lines}; ";
    Said said = log(lean + facts, released).run("check");
    assertThat(said.err()).contains("rake.lean").contains("worked out");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "rake.rise: sin(rake.lean) * rake.foot                 | rake.rise",
        "rake.rise: exp(rake.foot / 1 m) * cos(rake.lean)      | rake.rise",
        "rake.rise: spread(rake.foot, 900 mm * tan(rake.lean)) | rake.rise",
      })
  void oneOfTwoThingsThatNobodyKnowsIsNotGivenBack(String facts, String released) {
    String both =
        "rake.lean: {is: 31 deg, title: Lean, under: lines}; rake.foot: {is: 871 mm, title: F,"
            + " under: lines}; ";
    Said said = log(both + facts, released).run("publish", "--for", "public");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
  }

  /**
   * A table of parts, some rows of it under an agreement, and what is told of its column.
   *
   * @param rows how many of its five rows are withheld
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1 | parts.all: sum(parts.mass)                                  | parts.all      | true",
        "1 | parts.mid: mean(parts.mass)                                 | parts.mid      | true",
        "1 | parts.all: sum(parts.mass) + 12 g                           | parts.all      | true",
        "1 | parts.off: spread(parts.mass)                               | parts.off      | true",
        "1 | parts.twice: 2 * sum(parts.mass) / 7                        | parts.twice    | true",
        "2 | parts.all: sum(parts.mass)                                  | parts.all      | false",
        "2 | parts.all: sum(parts.mass); parts.off: spread(parts.mass)   | parts.all parts.off | true",
        "5 | parts.all: sum(parts.mass)                                  | parts.all      | false",
        "1 | parts.most: max(parts.mass)                                 | parts.most     | false",
      })
  void aCellIsNotGivenBackByItsColumn(int rows, String facts, String released, boolean told) {
    TinyLog log = log(facts, released);
    StringBuilder table = new StringBuilder("part,mass [g],under\n");
    int[] grams = {171, 223, 94, 148, 61};
    for (int i = 0; i < 5; i++) {
      table.append("p").append(i).append(',').append(grams[i]);
      table.append(i < rows ? ",lines\n" : ",\n");
    }
    log.write("tables/parts.csv", table.toString());
    Said said = told ? log.run("check") : log.run("publish", "--for", "public");
    if (told) {
      assertThat(said.err()).contains("tables/parts.csv:2:").contains("can be worked out");
      assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    } else {
      assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    }
  }
}
