package chinelog.publish;

import chinelog.digest.Sha256;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The program that is running, as one of the things that an edition is made of. */
final class Program {

  /** Looked up once: what runs stays the same, whatever becomes of its files. */
  private static @Nullable String stamp;

  private Program() {}

  /** A text that differs when the program, or the Java that runs it, does. */
  static synchronized String stamp() throws IOException {
    String known = stamp;
    if (known == null) {
      Stamps stamps = new Stamps();
      stamps.addAll(place(), List.of());
      known = Sha256.of(stamps.text() + Runtime.version());
      stamp = known;
    }
    return known;
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
