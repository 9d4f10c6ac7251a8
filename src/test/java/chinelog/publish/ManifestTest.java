package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ManifestTest {

  /** FIPS 180-4 examples, SHA-256 of "abc" (from memory; sha256sum agrees). */
  private static final String SHA256_OF_ABC =
      "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

  @TempDir private Path folder;

  @Test
  void namesEveryFileWithItsHash() throws IOException {
    Files.createDirectories(folder.resolve("site/pictures"));
    Files.writeString(folder.resolve("site/pictures/a  b.txt"), "abc");
    Manifest manifest = Manifest.of(folder);
    assertThat(manifest.files())
        .containsExactly(java.util.Map.entry("site/pictures/a  b.txt", SHA256_OF_ABC));
  }

  @Test
  void comesBackAsItWasWritten() throws IOException {
    Files.writeString(folder.resolve("b.txt"), "abc");
    Files.writeString(folder.resolve("a  c.txt"), "");
    Manifest manifest = Manifest.of(folder);
    Path file = folder.resolve("manifest.txt");
    manifest.write(file);
    assertThat(Manifest.read(file)).isEqualTo(manifest);
  }

  @Test
  void isEmptyWhereNoneWasWritten() throws IOException {
    assertThat(Manifest.read(folder.resolve("none")).files()).isEmpty();
  }
}
