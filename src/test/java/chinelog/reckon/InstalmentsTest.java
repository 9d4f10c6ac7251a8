package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.log.records.PostLength;
import java.math.BigDecimal;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class InstalmentsTest {

  @Test
  void lengthsAreAsEvenAsWholeEntriesAllow() {
    assertThat(Instalments.divide(List.of(100, 900, 500, 500, 1000), 3)).containsExactly(2, 2, 1);
  }

  @Test
  void thereAreNeverMoreInstalmentsThanEntries() {
    assertThat(Instalments.divide(List.of(10, 20), 5)).containsExactly(1, 1);
    assertThat(Instalments.divide(List.of(), 5)).isEmpty();
  }

  @Test
  void fiveMinutesMakeAnInstalment() {
    assertThat(Instalments.suggest(Collections.nCopies(20, 595))).isEqualTo(10);
    assertThat(Instalments.suggest(List.of())).isEqualTo(1);
    // Twenty evenings of sixty words each are no single post, though five minutes would read them.
    assertThat(Instalments.suggest(Collections.nCopies(20, 60))).isEqualTo(3);
  }

  @Test
  void aWantedLengthIsComeAsNearToAsWholeEntriesAllow() {
    PostLength words = new PostLength(new BigDecimal(900), PostLength.Measure.WORDS);
    assertThat(Instalments.of(Collections.nCopies(5, 300), words)).containsExactly(3, 2);
    assertThat(Instalments.of(List.of(100, 900, 500, 500, 1000), words)).containsExactly(2, 2, 1);
    assertThat(Instalments.of(List.of(2000, 800), words)).containsExactly(1, 1);
    assertThat(Instalments.of(List.of(), words)).isEmpty();
    // 238 words a minute.
    PostLength minutes = new PostLength(new BigDecimal("2.5"), PostLength.Measure.MINUTES);
    assertThat(Instalments.of(Collections.nCopies(10, 119), minutes)).containsExactly(5, 5);
  }

  @Test
  void noOtherDivisionIsMoreEven() {
    Random random = new Random(20260314);
    for (int round = 0; round < 50; round++) {
      List<Integer> words = random.ints(8, 0, 1000).boxed().toList();
      List<Integer> sizes = Instalments.divide(words, 3);
      assertThat(sizes.stream().mapToInt(s -> s).sum()).isEqualTo(8);
      double best = Double.POSITIVE_INFINITY;
      for (int a = 1; a < 7; a++) {
        for (int b = a + 1; b < 8; b++) {
          best = Math.min(best, squares(words, List.of(a, b - a, 8 - b)));
        }
      }
      assertThat(squares(words, sizes)).isEqualTo(best);
    }
  }

  private static double squares(List<Integer> words, List<Integer> sizes) {
    double sum = 0;
    int at = 0;
    for (int size : sizes) {
      double length = words.subList(at, at + size).stream().mapToInt(w -> w).sum();
      sum += length * length;
      at += size;
    }
    return sum;
  }
}
