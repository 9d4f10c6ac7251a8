package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
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

  /** Of numbers alone; each has one of its own that stands nowhere else. */
  private static final List<String> OF_NUMBERS =
      List.of(
          "7N2 mm * 187.4 mm",
          "7N2 mm * 187.4 mm * 61.3 mm",
          "7N2 mm + 187.4 mm",
          "7N2 mm - 187.4 mm",
          "7N2 mm / 3",
          "7N2 mm / 187.4 mm",
          "(7N2 mm + 187.4 mm) * 3",
          "sqrt(7N2 mm * 187.4 mm)",
          "sum(7N2 mm, 187.4 mm)",
          "mean(7N2 mm, 187.4 mm)",
          "max(7N2 mm, 187.4 mm) / 2",
          "min(7N2 mm, 917.4 mm) / 2",
          "abs(187.4 mm - 7N2 mm)",
          "round(7N2 mm / 187.4 mm)",
          "ceil(7N2 mm / 187.4 mm)",
          "(7N2 mm)^2",
          "-(7N2 mm) * -2",
          "spread(7N2 mm, 187.4 mm, 200 mm)",
          "sin(31.7 deg) * 7N2 mm",
          "2 * 7N2 mm * 0.73 * 11.20 m");

  /** Products of which both factors are withheld, with equal tolerances or none. */
  private static final List<String> TOLERANCES =
      List.of(
          "± 1 mm",
          "± 2 mm",
          "± 0.5 mm",
          "± 3 mm",
          "± 5 mm",
          "± 1 cm",
          "± 0.1 cm",
          "± 4 mm",
          "± 6 mm",
          "± 7 mm");

  /** A product, an area less a part, a third factor, a quotient. */
  private static final List<String> PRODUCTS = List.of("aN.x * aN.y", "aN.x * aN.y * 2");

  @Test
  void aReleasedResultIsToldWithoutWhatGivesItsFactors() {
    StringBuilder facts = new StringBuilder();
    StringBuilder released = new StringBuilder();
    for (int i = 0; i < OF_NUMBERS.size(); i++) {
      facts.append("lit").append(i).append(".v: {is: \"");
      facts.append(OF_NUMBERS.get(i).replace("N", number(i))).append("\", under: lines};");
      released.append(" lit").append(i).append(".v");
    }
    for (int i = 0; i < TOLERANCES.size() * PRODUCTS.size(); i++) {
      String tolerance = TOLERANCES.get(i / PRODUCTS.size());
      for (String side : List.of("x", "y")) {
        facts.append("a").append(i).append('.').append(side).append(": {is: ");
        facts.append(side.equals("x") ? 3901 + 13 * i : 211 + 7 * i).append(" mm ");
        facts.append(tolerance).append(", title: A, under: lines};");
      }
      facts.append("a").append(i).append(".area: ");
      facts.append(PRODUCTS.get(i % PRODUCTS.size()).replace("N", "" + i)).append(';');
      released.append(" a").append(i).append(".area");
    }
    TinyLog log = log(facts.toString(), released.toString().strip());
    Said said = log.run("publish", "--for", "public");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    String page = log.read("published/public/site/figures.html");
    for (int i = 0; i < OF_NUMBERS.size(); i++) {
      assertThat(page).contains("lit" + i + ".v").doesNotContain("7" + number(i) + "2");
    }
    for (int i = 0; i < TOLERANCES.size() * PRODUCTS.size(); i++) {
      assertThat(page).contains("a" + i + ".area");
    }
    assertThat(page).doesNotContain("\u00b1").doesNotContain("187.4").doesNotContain("31.7");
  }

  private static String number(int i) {
    return String.valueOf(31 + 3 * i);
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
