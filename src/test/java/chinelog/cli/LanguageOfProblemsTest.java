package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A maker is told in the language of the log; a program that reads what is told, in English. */
class LanguageOfProblemsTest {

  @TempDir private Path folder;

  @Test
  void aGermanLogIsToldOfInGermanEvenWhereItCannotBeRead() {
    TinyLog log = TinyLog.in(folder).write("facts.yaml", "hull.loa: 700 mmm\n");
    log.write("log.yaml", "language: de\ntitle: Merrow\nscael: 1:16\n");
    Said said = log.run("check");
    assertThat(said.err())
        .contains("log.yaml:3:1: Fehler: „scael“ ist hier kein Schlüssel. Ist „scale“ gemeint?")
        .contains("facts.yaml:1:15: Fehler: „hull.loa“: „mmm“ ist keine Einheit.");
    assertThat(log.run("check", "--json").out())
        .contains("\"severity\": \"error\"")
        .contains("\\\"scael\\\" is not a key here.");
  }

  @Test
  void aLogWithoutALanguageIsToldOfInEnglish() {
    TinyLog log = TinyLog.in(folder);
    log.write("log.yaml", "title: Merrow\nscael: 1:16\n");
    assertThat(log.run("check").err())
        .contains("log.yaml:2:1: error: \"scael\" is not a key here. Did you mean \"scale\"?");
  }
}
