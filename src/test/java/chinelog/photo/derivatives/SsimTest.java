package chinelog.photo.derivatives;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chinelog.photo.Lanczos;
import chinelog.photo.Logs;
import chinelog.photo.Shared;
import chinelog.photo.Ssim;
import chinelog.photo.album.Photograph;
import chinelog.photo.pixels.Decoder;
import chinelog.photo.pixels.PhotoKind;
import chinelog.photo.pixels.Pixels;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SsimTest {

  @TempDir Path folder;

  /** Two flat pictures of 100 and 120: the formula's value, which scikit-image 0.19.3 gives too. */
  @Test
  void flatPicturesAreAsLikeAsTheFormulaSays() {
    byte[] a = new byte[256];
    byte[] b = new byte[256];
    Arrays.fill(a, (byte) 100);
    Arrays.fill(b, (byte) 120);

    assertThat(Ssim.of(a, b, 16, 16)).isCloseTo(0.983610924998369, within(1e-6));
    assertThat(Ssim.of(a, a, 16, 16)).isEqualTo(1);
  }

  /** The bound is this project's own, set below what was measured; no source. */
  @Test
  void derivativesOfTheDemosPhotographsAreLikeACarefulReduction() throws IOException {
    Path photo = Shared.folder("scenes/photos").resolve("T20_0430.jpg");
    byte[] bytes = Files.readAllBytes(photo);
    Photograph photograph =
        new Logs(folder).photo("photos/a.jpg", bytes).open().photographs().get(0);
    Pixels full = Decoder.decode(PhotoKind.JPEG, bytes);

    for (Darkroom.Print print : new Darkroom(folder).print(photograph, List.of()).prints()) {
      Pixels made = Decoder.decode(PhotoKind.JPEG, Files.readAllBytes(print.jpeg()));
      byte[] careful = Lanczos.reduce(full, made.widthPx(), made.heightPx());
      assertThat(Ssim.of(careful, made.luma().bytes(), made.widthPx(), made.heightPx()))
          .isGreaterThan(0.93);
    }
  }
}
