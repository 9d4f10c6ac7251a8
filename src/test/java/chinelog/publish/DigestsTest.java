package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.digest.Sha256;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DigestsTest {

  @TempDir private Path folder;

  @Test
  void onlyTheVeryBytesOfAFileAsItIsAreKnownByIt() throws IOException {
    byte[] bytes = {1, 2, 3, 4};
    Path file = Files.write(folder.resolve("plate.jpg"), bytes);
    Digests digests = Digests.open(folder);
    assertThat(digests.find(bytes)).as("not asked for yet").isNull();
    assertThat(digests.of(file)).isEqualTo(Sha256.of(bytes));
    assertThat(digests.find(bytes)).isEqualTo(Sha256.of(bytes));
    assertThat(digests.find(new byte[] {1, 2, 3, 5})).isNull();
    assertThat(digests.find(new byte[] {1, 2, 3})).isNull();
    Files.write(file, new byte[] {1, 2, 3, 4, 5});
    assertThat(digests.find(bytes)).as("the file has changed").isNull();
    assertThat(digests.find(new byte[] {1, 2, 3, 4, 5})).isNull();
  }
}
