package chinelog.photo.pixels;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import chinelog.photo.Logs;
import chinelog.photo.Shots;
import chinelog.photo.album.Album;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(120)
class HeifTest {

  @TempDir Path folder;

  @Test
  void withoutTheProgramTheMessageSaysWhatToInstall() {
    assertThatThrownBy(() -> Heif.program(folder.toString()))
        .hasMessageContaining("not installed")
        .hasMessageContaining("libheif-examples");
  }

  @Test
  void aHeicPictureIsShownAsItsContainerTurnsItWhateverItsExifSays()
      throws IOException, InterruptedException {
    String path = System.getenv("PATH");
    assumeTrue(isInstalled(path, "heif-enc") && isInstalled(path, "heif-convert"), "no libheif");
    Path jpeg =
        Files.write(
            folder.resolve("a.jpg"),
            Shots.withExif(
                Shots.jpeg(Shots.scene(320, 240, 1), 0.9), 6, "T-20", "2026:04:01 18:40:11", ""));
    Path heic = folder.resolve("a.heic");
    Process process =
        new ProcessBuilder("heif-enc", jpeg.toString(), "-o", heic.toString())
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    assertThat(process.waitFor()).isZero();

    Album album = new Logs(folder).photo("photos/a.heic", Files.readAllBytes(heic)).open();

    Photograph photograph = album.photographs().get(0);
    assertThat(photograph.widthPx() + "x" + photograph.heightPx()).isEqualTo("320x240");
    assertThat(photograph.orientation()).isEqualTo(1);
    assertThat(photograph.camera()).isEqualTo("T-20");
    assertThat(photograph.taken()).isEqualTo(LocalDateTime.of(2026, 4, 1, 18, 40, 11));
    Darkroom darkroom = new Darkroom(folder);
    assertThat(darkroom.print(photograph, List.of()).prints()).hasSize(1);
    assertThatThrownBy(() -> darkroom.print(photograph, List.of(Logs.region(0, 0, 0.5, 0.5))))
        .hasMessageContaining("HEIC");
  }

  private static boolean isInstalled(String path, String program) {
    return List.of(path.split(":")).stream().anyMatch(f -> Files.isExecutable(Path.of(f, program)));
  }
}
