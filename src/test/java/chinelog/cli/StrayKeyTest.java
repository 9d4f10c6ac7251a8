package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A key in a place where no keys are read stops the log; prose that only looks like one does not.
 */
@Timeout(60)
class StrayKeyTest {

  private static final String HEAD = "---\nstage: planking\n---\n";

  @TempDir private Path folder;

  /** The whole note; {@code H} stands for a sound head, {@code |} for a line's end. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "Hunder: lines||The keel lies straight.",
        "H|under: lines||The keel lies straight.",
        "H# The keel|under: lines||It lies straight.",
        "H# The keel||under: lines||It lies straight.",
        "H---|under: lines|---||The keel lies straight.",
        "HThe keel lies straight.||---|under: lines|---||It does.",
        "+++|under = \"lines\"|+++||The keel lies straight.",
        "H+++|under = \"lines\"|+++||The keel lies straight.",
        "H```yaml|under: lines|```||The keel lies straight.",
        "H~~~|under: lines|~~~||The keel lies straight.",
        "H    under: lines||The keel lies straight.",
        "Under: lines|Stage: planking||The keel lies straight.",
        "UNDER: LINES||The keel lies straight.",
        "|||Under: Lines||The keel lies straight.",
        "---|stage: planking|# under: lines|---|The keel lies straight.",
        "---|stage: planking # under: lines|---|The keel lies straight.",
        "---|#under: lines|stage: planking|---|The keel lies straight.",
        "HThe keel lies straight.||under: lines",
        "HThe keel lies straight.|under: lines",
        "HThe keel lies straight. (under: lines)",
        "HThe keel lies straight. [under=lines]",
        "HThe keel lies straight. under=lines",
        "H## The keel||*under: lines*||It lies straight.",
        "H**Under:** lines||The keel lies straight.",
        "H`under: lines`||The keel lies straight.",
        "H<!-- under: lines -->||The keel lies straight.",
        "H> under: lines||The keel lies straight.",
        "H- under: lines||The keel lies straight.",
        "H# under: lines||The keel lies straight.",
        "H| under: lines ||The keel lies straight.",
        "Hunder: [lines]||The keel lies straight.",
        "Hunder: \"lines\"||The keel lies straight.",
        "Hunder:|  - lines||The keel lies straight.",
        "Hunder:|lines||The keel lies straight.",
        "Hunder : lines||The keel lies straight.",
        "Hunder; lines||The keel lies straight.",
        "Hunder lines||The keel lies straight.",
        "Hunder = lines||The keel lies straight.",
        "Hudner: lines||The keel lies straight.",
        "Huder: lines||The keel lies straight.",
        "Hunder: line||The keel lies straight.",
        "Hunder: liens||The keel lies straight.",
        "Hunter: lines||The keel lies straight.",
        "Honder: lines||The keel lies straight.",
        "Hsous: lines||The keel lies straight.",
        "Hbajo: lines||The keel lies straight.",
        "Hu\u200bnder: lines||The keel lies straight.",
        "H\uff55nder: lines||The keel lies straight.",
        "Hunder: drawings||The keel lies straight.",
        "Hleave-out: true||The keel lies straight.",
        "Hstage: planking|time: 3 h||The keel lies straight.",
        "H```|measured:|  hull.beam: 187 mm|```"
      })
  void aKeyOutsideItsPlaceStops(String note) {
    TinyLog.Said said = said(note);
    assertThat(said.status()).as(note).isEqualTo(Main.PROBLEMS);
    assertThat(said.err()).as(note).containsPattern(TinyLog.NOTE + ":\\d+:\\d+: error: ");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "HUnder: the keel, a batten. Over it: a weight.",
        "HUnder the lines of the hull lies a batten.",
        "HThe batten goes under lines 4 and 5.",
        "HUnder: two coats. Over: one.",
        "HUnder way at last: four strips a side.",
        "HWhat lies under: paint, filler, wood.",
        "H# Under the deck||Dark.",
        "H# Under lines of string||The plumb bob.",
        "HDate: a dried one, from the tin. Time: to sweep up.",
        "HTime: three hours, of which one was tea.",
        "HUsed: six strips and a blade.",
        "HMeasured: twice. Cut: once.",
        "HUnder|the keel a batten, over it a weight.",
        "H| Under | Over ||---|---|| oil | wax |",
        "HThe rule: never under, always over.",
        "HNot under 3 mm; under = too thin.",
        "HHe said: under no circumstances.",
        "HStage: three of seven. I like it.",
        "HUnder: wax.",
        "HThunder: lines of rain on the roof all night."
      })
  void proseThatLooksLikeAKeyDoesNotStop(String note) {
    TinyLog.Said said = said(note);
    assertThat(said.err()).as(note).doesNotContain(": error: ");
    assertThat(said.status()).as(note).isEqualTo(Main.DONE);
  }

  private TinyLog.Said said(String note) {
    boolean table = note.startsWith("H| Under");
    String text = note.replaceFirst("^H", HEAD);
    text = table ? text.replace("||", "|\n|") : text.replace('|', '\n');
    return TinyLog.in(folder).write(TinyLog.NOTE, text + "\n").run("check");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "photos.yaml~",
        "photos.yaml.bak",
        "photos.yaml.old",
        "photos.yaml.txt",
        "photos.yaml.orig",
        "photos.yaml.save",
        "photos.yaml#",
        "#photos.yaml#",
        ".photos.yaml",
        "~photos.yaml",
        "photos (1).yaml",
        "photos(1).yaml",
        "photos copy.yaml",
        "Copy of photos.yaml",
        "photos - Kopie.yaml",
        "Copia de photos.yaml",
        "photos.yaml (2)",
        "Photos.YML",
        "PHOTOS.YAML",
        "photos.yml",
        "photo.yaml",
        "phtoos.yaml",
        "photos.yam",
        "photosyaml",
        "photos.yaml.md.txt"
      })
  void aFileOfRemarksUnderAnotherNameStops(String name) {
    TinyLog log = TinyLog.in(folder).write("photos/" + name, "keel.png: {under: lines}\n");
    TinyLog.Said said = log.run("check");
    assertThat(said.err()).as(name).contains("photos/" + name).contains("error: ");
    assertThat(said.status()).as(name).isEqualTo(Main.PROBLEMS);
  }

  @ParameterizedTest
  @ValueSource(strings = {"photos.yaml", "Photos.yaml", "photos.yml"})
  void aFolderInPlaceOfRemarksStops(String name) throws Exception {
    TinyLog log = TinyLog.in(folder);
    Files.createDirectories(log.path("photos/" + name));
    Files.writeString(log.path("photos/" + name + "/photos.yaml"), "", StandardCharsets.UTF_8);
    TinyLog.Said said = log.run("check");
    assertThat(said.err()).contains("photos/" + name + ": error: ");
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
  }

  @Test
  void anEditorsLastStateStopsOnlyIfItHoldsMoreMarks() {
    TinyLog log = TinyLog.in(folder).write("photos/photos.yaml", "keel.png: {under: lines}\n");
    log.write("photos/photos.yaml~", "keel.png: {alt: Keel}\n");
    TinyLog.Said said = log.run("check");
    assertThat(said.status()).as(said.out() + said.err()).isEqualTo(Main.DONE);
    log.write("photos/photos.yaml", "keel.png: {alt: Keel}\n");
    log.write("photos/photos.yaml~", "keel.png: {under: lines}\n");
    assertThat(log.run("check").status()).isEqualTo(Main.PROBLEMS);
  }

  @Test
  void filesOfOtherProgramsBesideRemarksDoNotStop() {
    for (String name : List.of(".DS_Store", ".photos.yaml.swp", "Thumbs.db", "notes.txt~")) {
      TinyLog.Said said = TinyLog.in(folder).write("photos/" + name, "x").run("check");
      assertThat(said.status()).as(name).isEqualTo(Main.DONE);
    }
  }
}
