package chinelog.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.IntBinaryOperator;
import org.junit.jupiter.api.Test;

/**
 * Difference hash as ImageHash defines it (bit = right lighter than left, row by row, most
 * significant first); variance of the Laplacian over interior pixels, checked with OpenCV 4.6.
 */
class SignatureTest {

  @Test
  void risingRowsGiveAllOnes() {
    assertThat(hash((x, y) -> 10 * x)).isEqualTo("ffffffffffffffff");
  }

  @Test
  void aFlatPictureGivesAllNoughts() {
    assertThat(hash((x, y) -> 128)).isEqualTo("0");
  }

  @Test
  void rowsThatRiseAndFallByTurnsGiveBytesByTurns() {
    assertThat(hash((x, y) -> y % 2 == 0 ? 10 * x : 90 - 10 * x)).isEqualTo("ff00ff00ff00ff00");
  }

  @Test
  void distanceCountsTheBitsThatDiffer() {
    assertThat(Signature.distance(0xff00ff00ff00ff00L, 0xfe00ff00ff00ff03L)).isEqualTo(3);
  }

  @Test
  void sharpnessIsTheVarianceOfTheLaplacian() {
    assertThat(
            Signature.sharpness(
                Samples.plane(5, 5, luma(5, 5, (x, y) -> x == 2 && y == 2 ? 1 : 0))))
        .isCloseTo(20.0 / 9, within(1e-9));
    assertThat(Signature.sharpness(Samples.plane(6, 6, luma(6, 6, (x, y) -> (x + y) % 2 * 255))))
        .isEqualTo(1040400);
  }

  @Test
  void flatPicturesRampsAndTinyOnesAreNotSharp() {
    assertThat(Signature.sharpness(Samples.plane(6, 6, luma(6, 6, (x, y) -> 77)))).isZero();
    assertThat(Signature.sharpness(Samples.plane(6, 6, luma(6, 6, (x, y) -> x)))).isZero();
    assertThat(Signature.sharpness(Samples.plane(2, 9, luma(2, 9, (x, y) -> 9 * y)))).isZero();
  }

  private static String hash(IntBinaryOperator grey) {
    return Long.toHexString(Signature.differenceHash(luma(9, 8, grey)));
  }

  private static byte[] luma(int w, int h, IntBinaryOperator grey) {
    byte[] luma = new byte[w * h];
    for (int i = 0; i < luma.length; i++) {
      luma[i] = (byte) grey.applyAsInt(i % w, i / w);
    }
    return luma;
  }
}
