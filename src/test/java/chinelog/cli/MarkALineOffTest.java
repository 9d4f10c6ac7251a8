package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.file.Path;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A mark at the end of the paragraph above or below the one that it was meant for. */
@Timeout(60)
class MarkALineOffTest {

  private static final String LINE_OFF =
      "(a line off|eine Zeile daneben|een regel verkeerd|à une ligne près|una línea fuera)";

  @TempDir private Path folder;

  private Said check(String language, String first, String second) {
    TinyLog log = TinyLog.in(folder).replace("log.yaml", "en-GB", language);
    log.replace("log.yaml", "limits:", "sheets: {under: lines}\nlimits:");
    log.replace("facts.yaml", "hull.loa", "full.beam: {is: 2.99 m, under: lines}\nhull.loa");
    String text =
        first.replace("M", "{under=lines}") + "\n\n" + second.replace("M", "{under=lines}");
    return log.write(TinyLog.NOTE, "---\ntitle: A\n---\n" + text + "\n").run("check");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "en-GB | The keel rises in one long curve to the heel. | Tea, and then to bed. M",
        "en-GB | Tea, and then to bed. M | The keel rises in one long curve to the heel.",
        "de-DE | Der Kiel steigt in langem Bogen zur Hacke. | Tee, und dann ins Bett. M",
        "de-DE | Tee, und dann ins Bett. M | Zwischen zwei Spanten biegt sich die Kimm.",
        "nl-NL | De kiel stijgt in een bocht naar de hak. | Thee, en toen naar bed. M",
        "fr-FR | La quille monte en courbe vers le talon. | Du thé, puis au lit. M",
        "fr-FR | Du thé, puis au lit. M | Le bouchain tourne fort entre deux couples.",
        "es-ES | La quilla sube en larga curva hasta el talón. | Té, y a la cama. M"
      })
  void aMarkBesideWhatItWasMeantForIsAsked(String language, String first, String second) {
    Said said = check(language, first, second);
    assertThat(said.err()).containsPattern(TinyLog.QUESTION + " ?: .*" + LINE_OFF);
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "en-GB | The glue took all day. | Tea, and then to bed. M",
        "en-GB | The keel was sanded. | Tea, and then to bed. M",
        "en-GB | The keel lies on the frames. | The keel rises in one long curve. M",
        "en-GB | The keel lies on the frames. | She told me 190 at the least. M",
        "de-DE | Der Kiel liegt auf den Spanten. | Der Kiel steigt in langem Bogen. M"
      })
  void anotherMarkIsNotAsked(String language, String first, String second) {
    assertThat(check(language, first, second).err()).doesNotContainPattern(LINE_OFF);
  }
}
