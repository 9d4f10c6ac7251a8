package chinelog.publish;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Runs a class of these tests, or chinelog itself, in a Java of its own. */
final class OtherJava {

  private static final int PATIENCE_SECONDS = 120;

  private OtherJava() {}

  /** What was printed, and the exit status. */
  record Said(int status, String out, String err) {}

  /**
   * Starts it.
   *
   * @param options of Java itself
   * @param place its working folder, which also takes what it prints
   */
  static Process start(Path place, List<String> options, String main, String... args)
      throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xmx512m"));
    command.add("-Djava.awt.headless=true");
    command.addAll(options);
    command.add("-cp");
    command.add(
        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")));
    command.add(main);
    command.addAll(List.of(args));
    return new ProcessBuilder(command)
        .directory(place.toFile())
        .redirectOutput(place.resolve("out.txt").toFile())
        .redirectError(place.resolve("err.txt").toFile())
        .start();
  }

  /** Waits until it has ended. */
  static Said end(Process process, Path place) throws IOException, InterruptedException {
    if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new IOException("It did not end: " + Files.readString(place.resolve("err.txt")));
    }
    return new Said(
        process.exitValue(),
        Files.readString(place.resolve("out.txt")),
        Files.readString(place.resolve("err.txt")));
  }
}
