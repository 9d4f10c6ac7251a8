package chinelog.photo.pixels;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class OrientationTest {

  /** EXIF 2.32, tag 274, in the mapping of Pillow 9.4's {@code ImageOps.exif_transpose}. */
  @ParameterizedTest
  @CsvSource({
    "1, 123/456",
    "2, 321/654",
    "3, 654/321",
    "4, 456/123",
    "5, 14/25/36",
    "6, 41/52/63",
    "7, 63/52/41",
    "8, 36/25/14"
  })
  void storedPixelsAreTurnedUpright(int tag, String expected) {
    assertThat(rows(numbered(3, 2).upright(Orientation.of(tag)))).isEqualTo(expected);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 9, -1, 65535})
  void aStrayValueMeansAsStored(int tag) {
    assertThat(Orientation.of(tag)).isEqualTo(Orientation.AS_STORED);
  }

  @Test
  void aBoxOfTheUprightPictureIsFoundInTheStoredOneInAllEightCases() {
    for (Orientation orientation : Orientation.values()) {
      Pixels stored = numbered(7, 5);
      int w = orientation.swapsSides() ? 5 : 7;
      int h = orientation.swapsSides() ? 7 : 5;
      Box upright = new Box(1, 2, 3, 5);
      stored.fill(orientation.stored(upright, w, h));
      Pixels filledBefore = stored.upright(orientation);

      Pixels filledAfter = numbered(7, 5).upright(orientation);
      filledAfter.fill(upright);

      assertThat(filledBefore.bgr()).as("%s", orientation).isEqualTo(filledAfter.bgr());
    }
  }

  private static Pixels numbered(int w, int h) {
    byte[] bgr = new byte[3 * w * h];
    for (int i = 0; i < bgr.length; i++) {
      bgr[i] = (byte) (i / 3 + 1);
    }
    return new Pixels(w, h, bgr);
  }

  private static String rows(Pixels pixels) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < pixels.widthPx() * pixels.heightPx(); i++) {
      text.append(i > 0 && i % pixels.widthPx() == 0 ? "/" : "").append(pixels.bgr()[3 * i]);
    }
    return text.toString();
  }
}
