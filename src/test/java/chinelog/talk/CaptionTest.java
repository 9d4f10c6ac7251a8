package chinelog.talk;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class CaptionTest {

  @Test
  void aSentenceIsPartedWhereItsClausesEnd() {
    assertThat(
            Caption.of(
                "On one side lies everything I have bought so far, on the other a cardboard tube"
                    + " with a wax seal on it, which I cut rather than broke, because the seal was"
                    + " prettier than the tube."))
        .extracting(c -> String.join(" ", c.lines()))
        .containsExactly(
            "On one side lies everything I have bought so far,",
            "on the other a cardboard tube with a wax seal on it, which I cut rather than broke,",
            "because the seal was prettier than the tube.");
  }

  @Test
  void whatIsLongerThanALineIsCut() {
    assertThat(Caption.of("x".repeat(100)))
        .flatExtracting(Caption::lines)
        .allMatch(line -> line.length() <= 42)
        .satisfies(lines -> assertThat(String.join("", lines)).isEqualTo("x".repeat(100)));
  }

  @Test
  void aFigureStaysWithItsUnit() {
    for (int before = 20; before < 50; before++) {
      String sentence = "y".repeat(before / 2) + " " + "z".repeat(before / 2) + " 700\u202fmm";
      assertThat(Caption.of(sentence))
          .flatExtracting(Caption::lines)
          .anyMatch(line -> line.contains("700\u202fmm"));
    }
  }

  @Test
  void linesToReadAloudAreEvenAndEndWithClauses() {
    assertThat(
            Caption.lines(
                "The strips are the hull; the rest is there to hold the strips together.", 48))
        .containsExactly(
            "The strips are the hull;", "the rest is there to hold the strips together.");
  }
}
