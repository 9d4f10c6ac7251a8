package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a table's withheld figures come to, told openly beside them or elsewhere. */
class TypedTotalsTest {

  private static final String RUNS =
      "run,time [s],under\nA,13.42,\nB,14.86,\nC,11.37,lines\nD,12.91,\n";

  @TempDir private Path folder;

  private TinyLog log(String name, String runs) {
    return TinyLog.in(folder.resolve(name)).write("tables/runs.csv", runs);
  }

  private static Map<String, String> telling() {
    Map<String, String> tables = new LinkedHashMap<>();
    for (String total : List.of("Total", "Summe", "totaal", "Ensemble", "Suma", "all in all")) {
      tables.put(total, RUNS + total + ",52.56,\n");
    }
    for (String mean : List.of("mean", "Mittel", "gemiddeld", "moyenne", "Media")) {
      tables.put(mean, RUNS + mean + ",13.14,\n");
    }
    for (String least : List.of("fastest", "best run", "schnellste", "snelste", "la plus rapide")) {
      tables.put(least, RUNS + least + ",11.37,\n");
    }
    tables.put("least of two", RUNS.replace("D,12.91,", "D,11.90,") + "min,11.4,\n");
    tables.put(
        "column",
        "run,there [s],back [s],mean [s],under\nA,13.42,14.10,13.76,\nB,14.9,14.1,14.5,\n");
    return tables;
  }

  @Test
  void aTotalThatGivesARowAwayStopsThePublishing() {
    List<String> silent = new ArrayList<>();
    telling()
        .forEach(
            (name, table) -> {
              TinyLog log = log(name.replace(' ', '-'), table);
              if (name.equals("column")) {
                log.replace(
                    "log.yaml",
                    "limits:",
                    "tables:\n  runs: {columns: {back: {under: lines}}}\nlimits:");
              }
              Said said = log.run("publish", "--for", "public");
              if (said.status() != Main.PROBLEMS || !said.err().contains("tables/runs.csv:")) {
                silent.add(name + ": " + said.err());
              }
            });
    assertThat(silent).isEmpty();
  }

  @Test
  void aReleasedLeastOfAColumnGivesAwayItsOneWithheldCell() {
    String facts = "\nbest.run: {is: min(runs.time), title: Best run}\n";
    String release =
        "releases:\n  - {fact: best.run, under: lines, for: [public], by: Ada Finch, on: 2026-03-20, words: Tell the best.}\nlimits:";
    TinyLog one = log("one", RUNS).replace("log.yaml", "limits:", release);
    one.write("facts.yaml", one.read("facts.yaml") + facts);
    assertThat(one.run("publish", "--for", "public").err()).contains("tables/runs.csv:4");

    TinyLog two =
        log("two", RUNS.replace("D,12.91,", "D,12.91,lines"))
            .replace("log.yaml", "limits:", release);
    two.write("facts.yaml", two.read("facts.yaml") + facts);
    assertThat(two.run("publish", "--for", "public").status()).isEqualTo(Main.DONE);
  }

  @Test
  void aTotalThatIsWithheldTooOrNoneTellsNothing() {
    Map<String, String> tables = new LinkedHashMap<>();
    tables.put("plain", RUNS);
    tables.put("under", RUNS + "total,52.56,lines\n");
    tables.put("wrong", RUNS + "total,99.00,\n");
    tables.put("two", RUNS.replace("D,12.91,", "D,12.91,lines") + "total,52.56,\n");
    tables.put("word", RUNS.replace("D,", "best,"));
    List<String> stopped = new ArrayList<>();
    tables.forEach(
        (name, table) -> {
          Said said = log(name, table).run("publish", "--for", "public");
          if (said.status() != Main.DONE) {
            stopped.add(name + ": " + said.err());
          }
        });
    assertThat(stopped).isEmpty();
  }

  @Test
  void whatAColumnComesToIsAskedAboutWhereItIsTypedOpenly() {
    TinyLog log =
        log("typed", RUNS.replace(",under", "").replaceAll("(?m),(?:lines)?$", ""))
            .replace("log.yaml", "limits:", "tables:\n  runs: {under: lines}\nlimits:");
    String facts = log.read("facts.yaml");
    List<String> silent = new ArrayList<>();
    for (String fact :
        List.of(
            "run.total: 52.56 s",
            "run.best: {is: 11.37 s}",
            "mean.run: 13.1 s",
            "runs.worst: 14.86 s")) {
      Said said = log.write("facts.yaml", facts + fact + "\n").run("check");
      if (!said.err().matches("(?s).*facts.yaml:3:\\d+: " + TinyLog.QUESTION + ".*")) {
        silent.add(fact + said.err());
      }
    }
    log.write("facts.yaml", facts);
    for (String text :
        List.of(
            "All runs took 52.56 s.",
            "The best run was 11.37 seconds.",
            "Mean of the runs: 13.14 s.")) {
      Said said =
          log.write("entries/2026-04-02-trial.md", "# Trial\n\n" + text + "\n").run("check");
      if (!said.err().matches("(?s).*04-02-trial.md:3:\\d+: " + TinyLog.QUESTION + ".*")) {
        silent.add(text + said.err());
      }
    }
    assertThat(silent).isEmpty();
  }
}
