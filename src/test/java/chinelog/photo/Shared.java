package chinelog.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * Files from elsewhere, which are not part of this repository; tests skip where they are absent.
 */
public final class Shared {

  private Shared() {}

  public static Path folder(String name) {
    Path folder = Path.of(System.getProperty("chinelog.shared", "../shared")).resolve(name);
    assumeTrue(Files.isDirectory(folder), folder + " is not here, so this is not tried");
    return folder.toAbsolutePath().normalize();
  }

  public static List<Path> files(String name) throws IOException {
    try (Stream<Path> files = Files.list(folder(name))) {
      List<Path> sorted = files.filter(Files::isRegularFile).sorted().toList();
      assertThat(sorted).isNotEmpty();
      return sorted;
    }
  }
}
