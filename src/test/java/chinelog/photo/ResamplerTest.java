package chinelog.photo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class ResamplerTest {

  @Test
  void aFlatPictureStaysFlat() {
    byte[] bgr = new byte[3 * 97 * 61];
    Arrays.fill(bgr, (byte) 201);

    assertThat(new Pixels(97, 61, bgr).scaled(40, 13).bgr()).containsOnly(201);
  }

  @Test
  void halvingARampMeetsTheMeansOfItsNeighbours() {
    byte[] bgr = new byte[3 * 64];
    for (int i = 0; i < bgr.length; i++) {
      bgr[i] = (byte) (4 * (i / 3));
    }

    byte[] half = new Pixels(64, 1, bgr).scaled(32, 1).bgr();

    for (int x = 2; x < 30; x++) {
      assertThat(half[3 * x] & 0xFF).isEqualTo(8 * x + 2);
    }
  }

  @Test
  void sharpEdgesNeitherWrapNorOverflow() {
    byte[] bgr = new byte[3 * 100 * 100];
    for (int i = 0; i < bgr.length; i++) {
      bgr[i] = (byte) (i / 3 % 100 < 50 ? 0 : 255);
    }

    byte[] small = new Pixels(100, 100, bgr).scaled(37, 37).bgr();

    for (int x = 0; x < 37; x++) {
      int v = small[3 * (37 * 18 + x)] & 0xFF;
      assertThat(x < 17 ? v : x > 19 ? 255 - v : 0).isLessThan(30);
    }
  }

  @Test
  void sizesKeepTheShapeAndNeverVanish() {
    assertThat(Resampler.side(3000, 4000, 320)).isEqualTo(240);
    assertThat(Resampler.side(3, 5000, 320)).isEqualTo(1);
  }
}
