package chinelog.photo.derivatives;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.photo.Shots;
import chinelog.photo.pixels.Orientation;
import chinelog.photo.pixels.Pixels;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PrintStoreTest {

  private static final String KEY = "ab".repeat(32);

  @TempDir private Path log;

  /** As when two notes show photographs of the same bytes, which are worked on side by side. */
  @Test
  void theSameMayBeKeptTwice() throws IOException {
    PrintStore store = new PrintStore(log);
    Derivatives derivatives =
        Derivatives.of(Pixels.of(Shots.scene(320, 240, 1)), Orientation.of(1));
    PrintStore.Kept first = store.keep(KEY, derivatives);
    assertThat(store.keep(KEY, derivatives).prints()).isEqualTo(first.prints());
    try (Stream<Path> left = Files.list(log.resolve(".chinelog/prints"))) {
      assertThat(left.map(p -> p.getFileName().toString())).containsExactly("ab");
    }
  }
}
