package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A log is begun with its own name and scale, and with nothing of another boat. */
class BeginTest {

  @TempDir Path folder;

  @Test
  void onATerminalItAsksForNameAndScale() {
    Deque<String> answers = new ArrayDeque<>(List.of(" Curlew ", "a quarter", "12"));
    Path log = folder.resolve("curlew");
    StringWriter out = new StringWriter();
    Terminal talk =
        new Terminal(
            new PrintWriter(out, true),
            new PrintWriter(out, true),
            question -> {
              out.write(question + "\n");
              return answers.remove();
            });
    Clock clock = Clock.fixed(Instant.parse("2026-06-01T10:00:00Z"), ZoneOffset.UTC);
    assertThat(Main.run(new String[] {"begin", log.toString()}, talk, clock)).isEqualTo(Main.DONE);
    assertThat(answers).isEmpty();
    assertThat(out.toString()).contains("What do you build?", "That is not a scale.");
    assertThat(TinyLog.empty(log).read("log.yaml"))
        .contains("title: Building Curlew ", "subject: Curlew ", "scale: 1:12 ");
  }

  @Test
  void optionsSayTheSameForScriptsAndAPipeIsNeverAsked() {
    TinyLog log = TinyLog.empty(folder.resolve("curlew"));
    Said said = log.run("begin", "--name", "Curlew", "--scale", "1/4 in = 1 ft");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(log.read("log.yaml")).contains("scale: 1/4 in = 1 ft ");
    assertThat(log.read("log.yaml").lines().filter(l -> !l.startsWith("#")).toList().toString())
        .doesNotContain("Merrow");
    said = log.run("check");
    assertThat(said.err()).isEmpty();
    assertThat(TinyLog.empty(folder.resolve("other")).run("begin").status()).isEqualTo(Main.DONE);
    said = TinyLog.empty(folder.resolve("third")).run("begin", "--scale", "small");
    assertThat(said.status()).isEqualTo(Main.USAGE);
    assertThat(said.err()).contains("\u201csmall\u201d is not a scale");
    assertThat(folder.resolve("third")).doesNotExist();
  }

  @Test
  void theTableOfOffsetsIsEmptyAndFilledInItReckons() {
    TinyLog log = TinyLog.empty(folder.resolve("curlew"));
    log.run("begin", "--name", "Curlew", "--scale", "1:12");
    String empty = log.read("tables/offsets.csv");
    assertThat(empty.lines().filter(l -> !l.startsWith("#"))).hasSize(1);
    assertThat(empty).contains("# keel  ", "base line", "ft-in-8");
    log.write(
        "tables/offsets.csv",
        empty
            + "0,0,30,,20,58,95,70\n1,150,10,36,74,80,92,82\n2,300,0,56,82,86,95,88\n"
            + "3,450,2,42,72,78,104,84\n4,600,12,6,34,46,118,60\n");
    log.replace("facts.yaml", "# form: {", "form: {");
    log.write(
        "facts.yaml",
        log.read("facts.yaml").replace("water: fresh, under: lines}", "water: fresh}"));
    Said said = log.run("reckon", "form.displacement");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    log.replace("log.yaml", "# agreements:", "agreements: {lines: {with: Skerrick Yard}}\n#");
    // A misspelt mark among the remarks of a table is still one.
    log.write(
        "tables/offsets.csv", "# under: lines\n# undr: lines\n" + log.read("tables/offsets.csv"));
    assertThat(log.run("check").err())
        .contains("tables/offsets.csv:1:1: error", "tables/offsets.csv:2:1: error");
  }
}
