package chinelog.photo.pixels;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class SizesTest {

  @Test
  void aFlatPictureStaysFlat() throws IOException {
    byte[] bgr = new byte[3 * 97 * 61];
    Arrays.fill(bgr, (byte) 201);

    assertThat(new Pixels(97, 61, bgr).squeezed(40, 13).bgr()).containsOnly(201);
  }

  @Test
  void halvingARampMeetsTheMeansOfItsNeighbours() throws IOException {
    byte[] bgr = new byte[3 * 64];
    for (int i = 0; i < bgr.length; i++) {
      bgr[i] = (byte) (4 * (i / 3));
    }

    byte[] half = new Pixels(64, 1, bgr).squeezed(32, 1).bgr();

    for (int x = 2; x < 30; x++) {
      assertThat(half[3 * x] & 0xFF).isEqualTo(8 * x + 2);
    }
  }

  @Test
  void sharpEdgesNeitherWrapNorOverflow() throws IOException {
    byte[] bgr = new byte[3 * 100 * 100];
    for (int i = 0; i < bgr.length; i++) {
      bgr[i] = (byte) (i / 3 % 100 < 50 ? 0 : 255);
    }

    byte[] small = new Pixels(100, 100, bgr).squeezed(37, 37).bgr();

    for (int x = 0; x < 37; x++) {
      int v = small[3 * (37 * 18 + x)] & 0xFF;
      assertThat(x < 17 ? v : x > 19 ? 255 - v : 0).isLessThan(30);
    }
  }

  @Test
  void sizesKeepTheShapeAndNeverVanish() throws IOException {
    assertThat(sized(3000, 4000)).isEqualTo("240x320");
    assertThat(sized(4000, 3000)).isEqualTo("320x240");
    assertThat(sized(3, 5000)).isEqualTo("1x320");
    assertThat(sized(5000, 3)).isEqualTo("320x1");
  }

  private static String sized(int widthPx, int heightPx) throws IOException {
    Pixels small = new Pixels(widthPx, heightPx, new byte[3 * widthPx * heightPx]).sized(320);
    return small.widthPx() + "x" + small.heightPx();
  }
}
