package chinelog.photo.derivatives;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chinelog.photo.pixels.Luma;
import java.util.function.IntBinaryOperator;
import org.junit.jupiter.api.Test;

/** Variance of the Laplacian over interior pixels, checked with OpenCV 4.6. */
class SignatureTest {

  @Test
  void sharpnessIsTheVarianceOfTheLaplacian() {
    assertThat(Signature.sharpness(new Luma(5, 5, luma(5, 5, (x, y) -> x == 2 && y == 2 ? 1 : 0))))
        .isCloseTo(20.0 / 9, within(1e-9));
    assertThat(Signature.sharpness(new Luma(6, 6, luma(6, 6, (x, y) -> (x + y) % 2 * 255))))
        .isEqualTo(1040400);
  }

  @Test
  void flatPicturesRampsAndTinyOnesAreNotSharp() {
    assertThat(Signature.sharpness(new Luma(6, 6, luma(6, 6, (x, y) -> 77)))).isZero();
    assertThat(Signature.sharpness(new Luma(6, 6, luma(6, 6, (x, y) -> x)))).isZero();
    assertThat(Signature.sharpness(new Luma(2, 9, luma(2, 9, (x, y) -> 9 * y)))).isZero();
  }

  private static byte[] luma(int w, int h, IntBinaryOperator grey) {
    byte[] luma = new byte[w * h];
    for (int i = 0; i < luma.length; i++) {
      luma[i] = (byte) grey.applyAsInt(i % w, i / w);
    }
    return luma;
  }
}
