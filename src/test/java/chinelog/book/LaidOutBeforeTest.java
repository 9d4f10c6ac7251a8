package chinelog.book;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.edition.Edition;
import chinelog.edition.LongEdition;
import chinelog.markup.Theme;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A book whose last layout is known comes out as if it were not. */
class LaidOutBeforeTest {

  private static final String TEXT =
      "Planking went on along the batten, strake by strake. ".repeat(150);

  @TempDir Path folder;
  private List<String> before = List.of();

  @BeforeEach
  void printOnce() throws IOException {
    before = print(TEXT, List.of(), "before.pdf");
  }

  @Test
  void aWordThatMovesNothingIsPrintedAsItWasLaidOut() throws IOException {
    String changed = TEXT.replaceFirst("batten", "button");
    assertThat(print(changed, before, "warm.pdf")).isSameAs(before);
    print(changed, List.of(), "cold.pdf");
    assertThat(folder.resolve("warm.pdf")).hasSameBinaryContentAs(folder.resolve("cold.pdf"));
  }

  @Test
  void wordsThatMoveWhatFollowsAreLaidOutAnew() throws IOException {
    String changed = TEXT.replaceFirst("batten", "batten and the one below it, ".repeat(40));
    List<String> warm = print(changed, before, "warm.pdf");
    assertThat(warm).isNotEqualTo(before);
    assertThat(print(changed, List.of(), "cold.pdf")).isEqualTo(warm);
    assertThat(folder.resolve("warm.pdf")).hasSameBinaryContentAs(folder.resolve("cold.pdf"));
  }

  private List<String> print(String text, List<String> last, String file) throws IOException {
    Edition edition = LongEdition.ofText(text);
    return Press.printBuildBook(
        edition,
        Theme.load(Theme.USUAL, null),
        Press.Options.of(edition, false),
        last,
        folder.resolve(file));
  }
}
