package chinelog.cli;

import java.nio.file.Path;
import java.time.Clock;
import picocli.CommandLine.Parameters;

/** A command that names the log first. */
abstract class ReadCommand extends LogCommand {

  @Parameters(index = "0", paramLabel = "LOG", description = "The log's folder.")
  private Path log = Path.of("");

  ReadCommand(Terminal talk, Clock clock) {
    super(talk, clock);
  }

  @Override
  final Path folder() {
    return log;
  }
}
