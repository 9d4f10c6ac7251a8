package chinelog.photo.pixels;

import chinelog.problem.Sentence;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** Turns HEIC into PNG by the {@code heif-convert} that the maker has installed. */
final class Heif {

  private static final String PROGRAM = "heif-convert";
  private static final int PATIENCE_SECONDS = 60;

  private Heif() {}

  /** The picture as PNG, upright already: its turn is part of the container. */
  static byte[] toPng(byte[] heif) throws IOException {
    Path program = program(System.getenv().getOrDefault("PATH", ""));
    Path folder = Files.createTempDirectory("chinelog-heif");
    try {
      Path from = Files.write(folder.resolve("in.heic"), heif);
      Path to = folder.resolve("out.png");
      Process process =
          new ProcessBuilder(program.toString(), from.toString(), to.toString())
              .redirectErrorStream(true)
              .redirectOutput(folder.resolve("said").toFile())
              .start();
      if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
        process.destroyForcibly().waitFor();
        throw UnusablePhoto.damaged(Sentence.of("{0} did not come to an end with it", PROGRAM));
      }
      if (process.exitValue() != 0 || !Files.isRegularFile(to)) {
        throw UnusablePhoto.damaged(Sentence.of("{0} cannot read it", PROGRAM));
      }
      return Files.readAllBytes(to);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted while " + PROGRAM + " ran", e);
    } finally {
      try (Stream<Path> left = Files.list(folder)) {
        for (Path file : left.toList()) {
          Files.delete(file);
        }
      }
      Files.delete(folder);
    }
  }

  /** The program in the first folder of {@code path} that holds it. */
  static Path program(String path) throws UnusablePhoto {
    for (String folder : path.split(File.pathSeparator, -1)) {
      Path program = Path.of(folder.isEmpty() ? "." : folder, PROGRAM);
      if (Files.isExecutable(program) && Files.isRegularFile(program)) {
        return program.toAbsolutePath();
      }
    }
    throw new UnusablePhoto(
        "This is a HEIC picture, and the program that reads those is not installed.",
        "Install heif-convert (on Debian and Ubuntu: the package libheif-examples;"
            + " on a Mac: brew install libheif), or save the photograph as JPEG.");
  }
}
