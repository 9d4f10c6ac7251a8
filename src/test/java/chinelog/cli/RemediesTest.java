package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a maker is told to write instead. */
class RemediesTest {

  @TempDir Path folder;

  @Test
  void aCommaBetweenBracesIsToldWithTheWholeValueInQuotes() {
    TinyLog log =
        TinyLog.in(folder)
            .replace("log.yaml", "with: Skerrick Yard,", "with: Skerrick Yard, Orkney, Ltd,")
            .replace("log.yaml", "covers: the lines plan", "covers: the lines plan, all of it");
    String said = log.run("check").err();
    assertThat(said)
        .contains("log.yaml:10:17: error: Between braces a comma ends a value: \"with\" is only")
        .contains("with: \"Skerrick Yard, Orkney, Ltd\"")
        .contains("covers: \"the lines plan, all of it\"")
        .contains("2 errors");
    // A key that was misspelt and left without a value is still taken for a key.
    log = TinyLog.in(folder).replace("log.yaml", "from: 2026-03-02}", "from: 2026-03-02, untill}");
    assertThat(log.run("check").err()).contains("\"untill\" is not a key here", "\"until\"");
  }

  @Test
  void whatIsSaidOfAMaterialStandsWithIt() {
    TinyLog log = TinyLog.in(folder);
    log.replace(TinyLog.NOTE, "used: {cedar: 6}", "used: {cedar: 6, where: keel}");
    assertThat(log.run("check").err()).contains("{amount: 6, where: keel}");
    log.replace(
        TinyLog.NOTE, "used: {cedar: 6, where: keel}", "weighed: {hull: 412 g, keel, 31 g}");
    assertThat(log.run("check").err()).contains("keel: 31 g");
  }

  @Test
  void aSheetThatIsNotThereIsAskedForWhereItBelongs() {
    TinyLog log =
        TinyLog.in(folder)
            .replace("facts.yaml", "title: Length", "from: sheets/lines.pdf, title: Length");
    log.write(TinyLog.NOTE, log.read(TinyLog.NOTE) + "\nSee [it](../sheets/lines.pdf).\n");
    assertThat(log.run("check").err())
        .contains("Put the drawing there under that name", "There is no sheet")
        .doesNotContain("nothing of that kind");
  }
}
