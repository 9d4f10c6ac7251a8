package chinelog.photo.likeness;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.photo.pixels.Luma;
import java.util.Random;
import java.util.function.IntBinaryOperator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The closing against its definition (J. Serra, Image Analysis and Mathematical Morphology, 1982).
 */
class LineMapTest {

  @ParameterizedTest
  @CsvSource({"1, 1, 1", "3, 2, 2", "8, 5, 3", "17, 9, 3", "31, 12, 1", "40, 7, 5", "23, 6, 9"})
  void closingIsTheDarkestOfTheLightestOfEachNeighbourhood(int w, int h, int half) {
    byte[] samples = new byte[w * h];
    new Random(w).nextBytes(samples);
    byte[] lightest = each(samples, w, h, half, Math::max);
    assertThat(LineMap.closed(new Luma(w, h, samples), half))
        .isEqualTo(each(lightest, w, h, half, Math::min));
  }

  private static byte[] each(byte[] of, int w, int h, int half, IntBinaryOperator choose) {
    byte[] chosen = new byte[of.length];
    for (int y = 0; y < h; y++) {
      for (int x = 0; x < w; x++) {
        int best = of[y * w + x] & 0xFF;
        for (int v = Math.max(0, y - half); v <= Math.min(h - 1, y + half); v++) {
          for (int u = Math.max(0, x - half); u <= Math.min(w - 1, x + half); u++) {
            best = choose.applyAsInt(best, of[v * w + u] & 0xFF);
          }
        }
        chosen[y * w + x] = (byte) best;
      }
    }
    return chosen;
  }
}
