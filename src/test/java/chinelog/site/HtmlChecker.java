package chinelog.site;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The Nu HTML checker, in a Java of its own, as the build lays it down. */
final class HtmlChecker {

  private static final Path LIBRARIES = Path.of("target/html-checker");

  /** Of CSS Pseudo-Elements Module Level 4, section 4.5; this version of the checker is older. */
  private static final String UNKNOWN = "pseudo-class \u201c::details-content\u201d.";

  private HtmlChecker() {}

  /** The errors in some pages, a line for each; skips the test where there is no checker. */
  static List<String> errors(List<Path> pages) throws IOException {
    assumeTrue(
        Files.isDirectory(LIBRARIES),
        "the Nu checker is not in " + LIBRARIES + "; nothing was checked");
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xss2m",
                "-cp",
                LIBRARIES + "/*",
                "nu.validator.client.SimpleCommandLineValidator",
                "--errors-only",
                "--format",
                "gnu"));
    pages.forEach(page -> command.add(page.toString()));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return said.lines().filter(error -> !error.endsWith(UNKNOWN)).toList();
  }
}
