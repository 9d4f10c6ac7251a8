package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import chinelog.cli.TinyLog.Said;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.json.Json;

/** What those rely on who call chinelog from scripts, and how versions are told. */
@Timeout(60)
class ScriptingTest {

  @TempDir private Path folder;

  @Test
  void theVersionIsToldWithDateAndCommit() {
    Said said = TinyLog.say("--version");
    assertThat(said.status()).isZero();
    assertThat(said.out())
        .matches(
            "chinelog \\d+\\.\\d+\\.\\d+( \\(\\d{4}-\\d\\d-\\d\\d, commit [0-9a-f]+\\+?\\))?\n");
  }

  @Test
  void aLogSaysByWhichVersionItWasLastPublished() {
    TinyLog log = TinyLog.in(folder);
    log.run("check");
    assertThat(log.path("records/published-by.txt")).doesNotExist();
    assertThat(log.run("publish", "--for", "public").status()).isZero();
    assertThat(log.read("records/published-by.txt")).isEqualTo(TinyLog.say("--version").out());
    assertThat(log.run("check").err()).doesNotContain("published-by");
  }

  @ParameterizedTest
  @CsvSource({
    "chinelog 99.0.0, true",
    "'chinelog 0.10.0 (2020-01-01, commit abcdef0)', true",
    "'chinelog 0.0.9 (2099-01-01, commit abcdef0)', false",
    "garbage, false",
  })
  void anOlderProgramThatMeetsANewerLogSaysSo(String last, boolean newer) {
    TinyLog log = TinyLog.in(folder);
    log.write("records/published-by.txt", last + "\n");
    String words = "records/published-by.txt: reminder: This log was last published by " + last;
    for (String command : List.of("check", "reckon", "publish")) {
      log.write("records/published-by.txt", last + "\n");
      Said said = log.run(command);
      assertThat(said.status()).isZero();
      assertThat(said.err().contains(words)).isEqualTo(newer);
    }
    assertThat(log.read("records/published-by.txt")).isEqualTo(TinyLog.say("--version").out());
  }

  @Test
  void aSoundLogIsToldAsJson() {
    Said said = TinyLog.in(folder).run("check", "--json");
    assertThat(said.status()).isZero();
    assertThat(said.err()).isEmpty();
    Map<String, Object> report = parse(said.out());
    assertThat(report)
        .containsOnlyKeys("form", "sound", "entries", "photographs", "facts", "problems")
        .containsEntry("form", 1L)
        .containsEntry("sound", true)
        .containsEntry("entries", 1L)
        .containsEntry("photographs", 1L);
    assertThat((List<?>) report.get("problems"))
        .allSatisfy(p -> assertThat(((Map<?, ?>) p).get("severity")).isEqualTo("reminder"));
  }

  @Test
  void problemsAreToldAsJsonWithTheirPlaces() {
    TinyLog log =
        TinyLog.in(folder).replace("log.yaml", "scale: 1:16", "\"sc\\\\\\\"\u00e9\": 1:16");
    Said said = log.run("check", "--json", "--quiet");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(said.err()).isEmpty();
    Map<String, Object> report = parse(said.out());
    assertThat(report).containsEntry("sound", false);
    List<?> problems = (List<?>) report.get("problems");
    Map<?, ?> first = (Map<?, ?>) problems.get(0);
    assertThat(first.keySet().stream().map(Object::toString))
        .containsExactlyInAnyOrder("severity", "file", "line", "column", "what", "remedy");
    assertThat(first.get("severity")).isEqualTo("error");
    // The same as is told in words.
    assertThat(
            first.get("file")
                + ":"
                + first.get("line")
                + ":"
                + first.get("column")
                + ": error: "
                + first.get("what")
                + " "
                + first.get("remedy"))
        .isEqualTo(log.run("check").err().lines().findFirst().orElse(""));
    Said nowhere = TinyLog.say("check", "--json", folder.resolve("nowhere").toString());
    assertThat(nowhere.status()).isEqualTo(Main.PROBLEMS);
    assertThat(parse(nowhere.out())).containsEntry("sound", false);
  }

  private static Map<String, Object> parse(String json) {
    return new Json().toType(json, Json.MAP_TYPE);
  }

  @Test
  void theQuietAreToldOnlyWhatIsWrong() {
    TinyLog log = TinyLog.in(folder).write("entries/stray.markdown", "x");
    assertThat(log.run("check").err()).contains("reminder");
    assertThat(log.run("check", "--quiet")).isEqualTo(new Said(0, "", ""));
    assertThat(log.run("publish", "-q", "--for", "public")).isEqualTo(new Said(0, "", ""));
    assertThat(log.run("reckon", "-q", "hull.loa").out()).contains("hull.loa = full.loa");
    log.replace("log.yaml", "scale: 1:16", "scael: 1:16");
    Said said = log.run("check", "-q");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(said.err()).contains("scael").doesNotContain("reminder");
  }

  @Test
  void theShellCompletesCommandsAndOptions() throws Exception {
    Files.writeString(folder.resolve("completion"), TinyLog.say("completion").out());
    assertThat(completed("chinelog", "ke")).isEqualTo("keep");
    assertThat(completed("chinelog", "keep", "--in")).startsWith("--into");
    assertThat(completed("chinelog", "reckon", "x", "--pr")).startsWith("--price");
  }

  private String completed(String... words) throws Exception {
    String script =
        "source ./completion; COMP_WORDS=("
            + String.join(" ", words)
            + "); COMP_CWORD="
            + (words.length - 1)
            + "; _complete_chinelog 2>/dev/null; printf '%s\\n' \"${COMPREPLY[@]}\"";
    return output("bash", "-c", script).strip();
  }

  @Test
  void theManualPageIsSoundAndNamesEveryCommand() throws Exception {
    String page = TinyLog.say("manual").out();
    assertThat(page.lines().findFirst().orElse("")).startsWith(".TH CHINELOG 1 ");
    Files.writeString(folder.resolve("chinelog.1"), page);
    String shown = output("groff", "-man", "-ww", "-Tutf8", "-P-cbou", "chinelog.1");
    assertThat(shown).doesNotContain("warning", "error: ", "${");
    TinyLog.say("--help")
        .out()
        .lines()
        .filter(l -> l.matches("  [a-z]+ {2,}.*"))
        .forEach(l -> assertThat(shown).contains("chinelog " + l.strip().split(" ")[0]));
    assertThat(shown).contains("OUTPUT OF CHECK --JSON", "EXIT STATUS", "NO_COLOR");
  }

  /** What a command prints; the test is skipped where there is none of that name. */
  private String output(String... command) throws Exception {
    Process process;
    try {
      process =
          new ProcessBuilder(command).directory(folder.toFile()).redirectErrorStream(true).start();
    } catch (IOException e) {
      assumeTrue(false, command[0] + " is not installed");
      throw e;
    }
    String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    process.waitFor();
    return output;
  }
}
