package chinelog.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code chinelog} by itself. */
@Command(
    name = "chinelog",
    description = "Turns the log of a model's build into a web site and printed books.",
    mixinStandardHelpOptions = true,
    version = "chinelog 0.1.0",
    footer = {"", "Example: ${sys:chinelog.command:-chinelog} publish sample-log"})
final class TopCommand implements Runnable {

  @Spec private CommandSpec spec;

  TopCommand() {
    this.spec = CommandSpec.create();
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "Name a command.");
  }
}
