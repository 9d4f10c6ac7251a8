package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two logs that differ only in what everybody may not see are told aloud with the same bytes. */
class TalkTwinsTest {

  private static final int PAIRS = Integer.getInteger("chinelog.talk-pairs", 1);

  @TempDir Path temp;

  @Test
  void toldSeriesOfTwinsAreEqual() throws IOException {
    for (int seed = 0; seed < PAIRS; seed++) {
      Path one = told(new SmallLog(seed, 1000 + seed).write(temp.resolve("one" + seed)));
      Path other = told(new SmallLog(seed, 5000 + seed).write(temp.resolve("other" + seed)));
      assertThat(ByteTwinsTest.publish(other, "public"))
          .isEqualTo(ByteTwinsTest.publish(one, "public"));
      assertThat(ByteTwinsTest.tree(other, "public"))
          .isEqualTo(ByteTwinsTest.tree(one, "public"))
          .containsKey("talk");
    }
  }

  private static Path told(Path log) throws IOException {
    Path head = log.resolve("log.yaml");
    String text = Files.readString(head);
    assertThat(text).contains("gets: [site, book]");
    Files.writeString(head, text.replace("gets: [site, book]", "gets: [talk]"));
    return log;
  }
}
