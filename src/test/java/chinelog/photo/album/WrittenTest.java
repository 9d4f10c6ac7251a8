package chinelog.photo.album;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.photo.Logs;
import chinelog.photo.Shared;
import chinelog.photo.Shots;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * IPTC IIM 4.2: dataset 2:120 is Caption/Abstract. IPTC Photo Metadata Standard 2021.1: {@code
 * Iptc4xmpCore:AltTextAccessibility}. Names as in the tables of ExifTool 12.57.
 */
class WrittenTest {

  private static final byte[] PLAIN = Shots.jpeg(Shots.scene(60, 40, 1), 0.9);

  @TempDir Path folder;

  @Test
  void aCaptionInIptcIsRead() {
    assertThat(written(Shots.withIptc(PLAIN, 120, "Die Mallen \u2013 f\u00fcnf St\u00fcck")))
        .isEqualTo(new Written("Die Mallen \u2013 f\u00fcnf St\u00fcck", ""));
    assertThat(written(Shots.withIptc(PLAIN, 110, "Tern Lane")))
        .as("credit")
        .isEqualTo(Written.NONE);
  }

  @Test
  void ofACaptionInSeveralLanguagesTheDefaultOneIsReadAndItGoesBeforeIptc() {
    byte[] both =
        Shots.withXmp(
            Shots.withIptc(PLAIN, 120, "older"),
            """
            <dc:description><rdf:Alt>
              <rdf:li xml:lang="de">Die Mallen</rdf:li>
              <rdf:li xml:lang="x-default">The
                moulds</rdf:li>
            </rdf:Alt></dc:description>
            <Iptc4xmpCore:AltTextAccessibility><rdf:Alt>
              <rdf:li xml:lang="x-default">Five moulds on a board</rdf:li>
            </rdf:Alt></Iptc4xmpCore:AltTextAccessibility>
            """);

    assertThat(written(both)).isEqualTo(new Written("The moulds", "Five moulds on a board"));
  }

  @Test
  void aPlainPropertyAndATextWithoutADefaultAreReadToo() {
    assertThat(written(Shots.withXmp(PLAIN, "<dc:description>Moulds</dc:description>")).caption())
        .isEqualTo("Moulds");
    String german = "<rdf:Alt><rdf:li xml:lang=\"de\">Mallen</rdf:li></rdf:Alt>";
    String xmp = "<dc:description>" + german + "</dc:description>";
    assertThat(written(Shots.withXmp(PLAIN, xmp)).caption()).isEqualTo("Mallen");
  }

  @Test
  void pagesOfTextAreNoCaption() {
    String xmp = "<dc:description>" + "moulds ".repeat(400) + "</dc:description>";

    assertThat(written(Shots.withXmp(PLAIN, xmp))).isEqualTo(Written.NONE);
  }

  @Test
  void whatWasWrittenIsRememberedWithThePhotograph() throws IOException {
    Logs logs = new Logs(folder).photo("photos/a.jpg", Shots.withIptc(PLAIN, 120, "A\t100 % b"));
    Album first = logs.open();
    Files.setLastModifiedTime(
        folder.resolve(".chinelog/photos.index"),
        FileTime.from(Instant.parse("2099-01-01T00:00:00Z")));

    assertThat(first.photographs().get(0).written().caption()).isEqualTo("A 100 % b");
    assertThat(logs.open()).isEqualTo(first);
  }

  /** As ExifTool 12.57 shows them. */
  @ParameterizedTest
  @CsvSource({
    "metadata-extractor-images__Nikon_D1X.jpg, Workshop showing workbench and storage",
    "metadata-extractor-images__FujiFilm_FinePixS1Pro__5_.jpg, Wilts & Dorset Bus",
    "metadata-extractor-images__Photoshop__3_.jpg, Test description string for metadata-extractor",
    "exiftool__XMP.jpg, UTF-16 (big-endian) encoded XMP",
    // Cameras fill in EXIF ImageDescription by themselves.
    "metadata-extractor-images__Sanyo_SR6.jpg, ''",
    "exif-samples__Konica_Minolta_DiMAGE_Z3.jpg, ''"
  })
  void captionsOfPicturesFromElsewhereAreThoseThatOtherProgramsShow(String name, String caption)
      throws IOException {
    byte[] bytes = Files.readAllBytes(Shared.folder("corpus/01-exif-cameras").resolve(name));

    assertThat(written(bytes).caption()).isEqualTo(caption);
  }

  private static Written written(byte[] file) {
    return Exif.read(file).written();
  }
}
