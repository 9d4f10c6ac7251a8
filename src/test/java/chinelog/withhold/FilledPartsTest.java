package chinelog.withhold;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.edition.Picture.Part;
import chinelog.photo.pixels.Box;
import java.util.List;
import org.junit.jupiter.api.Test;

class FilledPartsTest {

  private static List<Part> of(Box... boxes) {
    return FilledParts.of(List.of(boxes), 100, 200);
  }

  @Test
  void aBoxIsAPartOfThePicture() {
    assertThat(of(new Box(0, 50, 25, 200))).containsExactly(new Part(0, 0.25, 0.25, 1));
  }

  @Test
  void whatIsFilledTwiceLeavesNoTrace() {
    assertThat(of(new Box(0, 0, 80, 100), new Box(10, 20, 40, 60)))
        .isEqualTo(of(new Box(0, 0, 80, 100)));
    assertThat(of(new Box(0, 0, 50, 100), new Box(50, 0, 80, 100)))
        .isEqualTo(of(new Box(0, 0, 80, 100)));
    assertThat(of(new Box(0, 0, 80, 40), new Box(0, 40, 80, 100)))
        .isEqualTo(of(new Box(0, 0, 80, 100)));
  }

  @Test
  void theSameAreaDrawnInTwoWaysGivesTheSameParts() {
    List<Part> cross = of(new Box(40, 0, 60, 100), new Box(0, 40, 100, 60));
    assertThat(cross)
        .containsExactly(
            new Part(0.4, 0, 0.6, 0.2), new Part(0, 0.2, 1, 0.3), new Part(0.4, 0.3, 0.6, 0.5));
    assertThat(
            of(
                new Box(40, 0, 60, 40),
                new Box(0, 40, 50, 60),
                new Box(30, 40, 100, 60),
                new Box(40, 55, 60, 100)))
        .isEqualTo(cross);
  }

  @Test
  void nothingFilledIsNoPart() {
    assertThat(of()).isEmpty();
  }
}
