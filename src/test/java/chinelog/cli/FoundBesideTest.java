package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDateTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What stands beside something withheld and may be the same: a photograph of its day, a fact under
 * another name, an agreement that a wrong year or clock has ended.
 */
@Timeout(120)
class FoundBesideTest {

  private static final String SHUT = "entries/2026-04-10-drawing.md";

  @TempDir private Path folder;

  /** A log with an open and a withheld note of 10 April. */
  private TinyLog log() {
    TinyLog log = TinyLog.in(folder);
    log.write(SHUT, "---\nstage: planking\ntime: 20:00-22:00\nunder: lines\n---\nThe roll.\n");
    return log.write(
        "entries/2026-04-10-keel.md", "---\ntime: 09:00-12:00\n---\nThe keel, again.\n");
  }

  @ParameterizedTest
  @CsvSource({
    "photos/a.jpg, 2026-04-10T21:00",
    "photos/a.jpg, 2026-04-10T10:00",
    "photos/a.jpg, 2026-04-10T00:00",
    "photos/a.jpg, 2026-04-10T23:59:59",
    "photos/a.jpg, 2026-04-11T00:30",
    "photos/a.jpg, 2026-04-11T05:59",
    "photos/2026-04-10/a.jpg, 2026-05-01T10:00",
    "photos/2026-04-10/a.jpg, 2020-01-01T10:00",
    "photos/20260410/a.jpg, 2026-05-01T10:00",
    "photos/2026_04_10/a.jpg, 2026-05-01T10:00",
    "photos/2026.04.10/a.jpg, 2026-05-01T10:00",
    "photos/2026-04-10 evening/a.jpg, 2026-05-01T10:00",
    "photos/IMG_20260410_211500.jpg, 2026-05-01T10:00",
    "photos/2026-04-10-drawing/a.jpg, 2026-05-01T10:00",
    "photos/planking/a.jpg, 2026-05-01T10:00",
    "photos/planking/more/a.jpg, 2026-05-01T10:00",
    "photos/a.jpg, 2026-04-10T19:59",
    "photos/IMG-20260410-WA0007.jpg, 2026-05-01T10:00",
    "photos/Screenshot 2026-04-10 at 21.15.jpg, 2026-05-01T10:00",
    "photos/2026/04/10/a.jpg, 2026-05-01T10:00",
    "photos/10.04.2026/a.jpg, 2026-05-01T10:00"
  })
  void aPhotographThatMayBelongToAWithheldNoteIsAsked(String path, LocalDateTime taken) {
    TinyLog log = log().photo(path, taken);
    TinyLog.Said said = log.run("publish", "--for", "public");
    assertThat(said.err()).contains("question: Does the photograph " + path);
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
    assertThat(log.path("published/public")).doesNotExist();
  }

  @ParameterizedTest
  @CsvSource({
    "photos/a.jpg, 2026-04-09T23:59",
    "photos/a.jpg, 2026-04-11T06:00",
    "photos/a.jpg, 2026-05-01T21:00",
    "photos/keel/a.jpg, 2026-05-01T21:00"
  })
  void aPhotographOfAnotherDayIsNotAsked(String path, LocalDateTime taken) {
    assertThat(log().photo(path, taken).run("check").err()).doesNotContain("question: ");
  }

  @Test
  void aPhotographThatIsNamedOrMarkedIsNotAsked() {
    TinyLog log = log().photo("photos/a.jpg", LocalDateTime.parse("2026-04-10T21:00"));
    log.write("photos/photos.yaml", "a.jpg: {under: lines}\n");
    assertThat(log.run("check").err()).doesNotContain("which it may belong to");
    log.write("photos/photos.yaml", "a.jpg: {leave-out: true}\n");
    assertThat(log.run("check").err()).doesNotContain("which it may belong to");
    log.remove("photos/photos.yaml");
    log.replace("entries/2026-04-10-keel.md", "again.", "again.\n\n![Keel](../photos/a.jpg)");
    assertThat(log.run("check").err()).doesNotContain("which it may belong to");
  }

  @Test
  void anAnswerAboutAPhotographIsVoidWhenThePictureChanges() {
    TinyLog log = log().photo("photos/a.jpg", LocalDateTime.parse("2026-04-10T10:00"));
    String written = log.run("check").err().replaceAll("(?s).*answers.yaml: (- .*?\\}).*", "$1");
    log.write("answers.yaml", written.replace("\u2026", "It shows the keel") + "\n");
    assertThat(log.run("check").err()).doesNotContain("question: ");
    log.photo("photos/a.jpg", LocalDateTime.parse("2026-04-10T11:00"));
    assertThat(log.run("check").err()).contains("question: ");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '@',
      value = {
        "full.beam @ 2.99 m @ hull.width @ 187 mm",
        "full.beam @ 2.99 m @ hull.width @ 186.9 mm",
        "full.beam @ 2.99 m @ hull.width @ 18.7 cm",
        "full.beam @ 2.99 m @ hull.width @ 7.36 in",
        "full.beam @ 2.99 m @ boat.width @ 2.99 m",
        "full.beam @ 2.99 m @ real.breadth @ 2.95 m",
        "full.beam @ 2.99 m @ hull.breite @ 187 mm",
        "full.beam @ 2.99 m @ hull.manga @ 190 mm",
        "full.beam @ 2.99 m @ hull.bau @ 185 mm",
        "full.beam @ 2.99 m @ hull.largeur @ 187 mm",
        "full.beam @ 2.99 m @ jig.gap @ 2.99 m",
        "hull.beam @ 187 mm @ jig.gap @ 187 mm",
        "hull.beam @ 187 mm @ real.width @ 2.99 m",
        "hull.draught @ 52 mm @ paint.depth @ 52 mm",
        "hull.draught @ 52 mm @ hull.tiefgang @ 53 mm",
        "hull.displacement @ 1653 g @ parts.total @ 1633 g",
        "hull.displacement @ 1653 g @ all.afloat @ 1.65 kg",
        "full.speed @ 9 kn @ real.speed @ 9.1 kn",
        "sail.area @ 1200 cm² @ cloth.area @ 0.12 m²",
        "hull.volume @ 2377 cm³ @ water.moved @ 2.377 L"
      })
  void aFactThatEqualsAWithheldOneIsAsked(String secret, String value, String open, String other) {
    String facts = secret + ": {is: " + value + ", under: lines}\n" + open + ": " + other + "\n";
    TinyLog log = log().write("facts.yaml", facts).replace("log.yaml", "hull.loa", open);
    log.replace(
        "log.yaml",
        "<= 36 in",
        other.matches(".* k?g|.*n|.*[²³]|.*L") ? ">= 0 * " + open : "<= 36 m");
    TinyLog.Said said = log.run("check");
    assertThat(said.err()).contains("question: Is " + open);
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '@',
      value = {
        "full.beam @ 2.99 m @ hull.width @ 140 mm",
        "full.beam @ 2.99 m @ hull.length @ 184 mm",
        "full.beam @ 2.99 m @ strake.width @ 12 mm",
        "hull.draught @ 52 mm @ mast.height @ 53 mm",
        "hull.displacement @ 1653 g @ deck.weight @ 96 g"
      })
  void aFactThatDoesNotIsNotAsked(String secret, String value, String open, String other) {
    String facts = secret + ": {is: " + value + ", under: lines}\n" + open + ": " + other + "\n";
    TinyLog log = log().write("facts.yaml", facts).replace("log.yaml", "hull.loa", open);
    log.replace("log.yaml", "<= 36 in", other.endsWith(" g") ? "<= 9 kg" : "<= 36 m");
    assertThat(log.run("check").err()).doesNotContain("question: ").doesNotContain(": error: ");
  }

  @Test
  void theEndOfAnAgreementIsAskedOnce() {
    TinyLog log = log();
    log.replace(
        "log.yaml", "from: 2026-03-02", "from: 2026-03-02, until: 2026-05-20, afterwards: free");
    TinyLog.Said said = log.run("publish", "--for", "public");
    assertThat(said.err()).contains("question: Is the end of lines on 2026-05-20 right");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);

    String written = said.err().replaceAll("(?s).*answers.yaml: (- .*?\\}).*", "$1");
    log.write("answers.yaml", written.replace("\u2026", "She is unveiled") + "\n");
    assertThat(log.run("publish", "--for", "public").status()).isEqualTo(Main.DONE);
    log.replace("log.yaml", "until: 2026-05-20", "until: 2026-05-19");
    assertThat(log.run("check").err()).contains("question: ");
  }
}
