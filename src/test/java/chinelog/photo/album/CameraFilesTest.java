package chinelog.photo.album;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.photo.Logs;
import chinelog.photo.Shared;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.derivatives.Signature;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What other programs read in files of real cameras, we read too. */
@Timeout(120)
class CameraFilesTest {

  @TempDir Path folder;

  /** ianare/exif-samples, commit 5332a9c: file dumps, and as ExifTool 12.57 shows them. */
  @ParameterizedTest
  @CsvSource({
    "exif-samples__Canon_40D.jpg, Canon EOS 40D, 2008-05-30T15:56:01, 100x68",
    "exif-samples__Nikon_D70.jpg, NIKON D70, 2008-03-15T09:52:01, 100x66"
  })
  void timeCameraAndSizeAreThoseOfThePublishedDumps(
      String name, String camera, LocalDateTime taken, String size) throws IOException {
    byte[] bytes = Files.readAllBytes(Shared.folder("corpus/01-exif-cameras").resolve(name));

    Photograph photograph =
        new Logs(folder).photo("photos/a.jpg", bytes).open().photographs().get(0);

    assertThat(photograph.camera()).isEqualTo(camera);
    assertThat(photograph.taken()).isEqualTo(taken);
    assertThat(photograph.orientation()).isEqualTo(1);
    assertThat(photograph.widthPx() + "x" + photograph.heightPx()).isEqualTo(size);
    assertThat(Exif.read(bytes).offset()).as("a time of no known zone").isNull();
  }

  /**
   * recurser/exif-orientation-examples, commit 219294e: one scene stored in all eight ways. That at
   * most 6 of 64 bits differ is chosen after measuring.
   */
  @Test
  void oneSceneStoredInAllEightWaysComesOutAlike() throws IOException {
    Path files = Shared.folder("corpus/02-orientation");
    List<Signature> looks = new ArrayList<>();
    for (int i = 1; i <= 8; i++) {
      String name = "exif-orientation-examples__Landscape_" + i + ".jpg";
      Logs logs = new Logs(folder.resolve("" + i));
      Photograph photograph =
          logs.photo("photos/a.jpg", Files.readAllBytes(files.resolve(name)))
              .open()
              .photographs()
              .get(0);
      assertThat(photograph.orientation()).isEqualTo(i);
      assertThat(photograph.widthPx() + "x" + photograph.heightPx()).isEqualTo("1800x1200");
      looks.addAll(new Darkroom(folder.resolve("" + i)).look(photograph));
    }

    assertThat(looks).hasSize(8);
    for (Signature a : looks) {
      assertThat(looks).allMatch(b -> a.view().likeness(b.view()) > 0.99);
    }
  }
}
