package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CleanPicturesTest {

  private static final String A = "a".repeat(64);
  private static final String B = "b".repeat(64);

  @TempDir private Path log;

  @BeforeEach
  void makeTheCache() throws IOException {
    Files.createDirectories(log.resolve(".chinelog"));
  }

  private Path file() {
    return log.resolve(".chinelog/clean-pictures");
  }

  @Test
  void whatWasAddedIsRemembered() throws IOException {
    CleanPictures.of(log).addAll(Set.of(A));
    CleanPictures.of(log).addAll(Set.of(B));
    assertThat(CleanPictures.of(log).hashes()).containsExactlyInAnyOrder(A, B);
  }

  @Test
  void whatAnotherJavaOrOtherRulesFoundIsForgotten() throws IOException {
    CleanPictures.of(log).addAll(Set.of(A));
    Files.writeString(file(), Files.readString(file()).replace("rules ", "rules 0"));
    assertThat(CleanPictures.of(log).hashes()).isEmpty();
  }

  @Test
  void whatIsDamagedIsNoHindrance() throws IOException {
    CleanPictures.of(log).addAll(Set.of(A, B));
    String all = Files.readString(file());
    Files.writeString(file(), all.substring(0, all.length() - 30));
    assertThat(CleanPictures.of(log).hashes()).contains(A).doesNotContain(B);
    Files.write(file(), new byte[] {(byte) 0xff, (byte) 0xfe, 0, 10, (byte) 0xc3});
    assertThat(CleanPictures.of(log).hashes()).isEmpty();
    CleanPictures.of(log).addAll(Set.of(B));
    assertThat(CleanPictures.of(log).hashes()).containsExactly(B);
  }
}
