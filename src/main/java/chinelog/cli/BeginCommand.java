package chinelog.cli;

import chinelog.log.NewLog;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code chinelog begin}. */
@Command(
    name = "begin",
    description = "Lay down a new log, with a commented log.yaml and a first entry.",
    footer = {"", "Example: ${sys:chinelog.command:-chinelog} begin my-build"})
final class BeginCommand extends LogCommand {

  @Parameters(paramLabel = "FOLDER", description = "A folder that does not exist yet, or is empty.")
  private Path folder = Path.of("");

  BeginCommand(Talk talk, Clock clock) {
    super(talk, clock);
  }

  @Override
  Path folder() {
    return folder;
  }

  @Override
  public Integer call() throws IOException {
    if (Files.exists(folder) && !isEmptyFolder(folder)) {
      throw wrong(
          "\u201c"
              + folder
              + "\u201d holds something already, and nothing of yours is overwritten."
              + " Name a new folder.");
    }
    NewLog.layDown(folder, today());
    talk().out().println("A new log lies in " + folder + ".");
    talk().out().println("Open log.yaml in any editor; its comments say what goes where.");
    talk().out().println("Then: " + Talk.command("check", folder));
    return Main.DONE;
  }

  private static boolean isEmptyFolder(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return false;
    }
    try (Stream<Path> inside = Files.list(folder)) {
      return inside.findAny().isEmpty();
    }
  }
}
