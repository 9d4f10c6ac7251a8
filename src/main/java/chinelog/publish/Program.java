package chinelog.publish;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.List;

/** The program that is running, as one of the things that an edition is made of. */
final class Program {

  private Program() {}

  /** A text that differs when the program, or the Java that runs it, does. */
  static String stamp() throws IOException {
    Stamps stamps = new Stamps();
    stamps.addAll(place(), List.of());
    return stamps.text() + Runtime.version();
  }

  /** The program's file, or the folder it was compiled into. */
  private static Path place() {
    try {
      return Path.of(Program.class.getProtectionDomain().getCodeSource().getLocation().toURI());
    } catch (URISyntaxException e) {
      throw new IllegalStateException("the program's own place is no address", e);
    }
  }
}
