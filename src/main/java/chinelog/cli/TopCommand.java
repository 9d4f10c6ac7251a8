package chinelog.cli;

import chinelog.publish.ProgramVersion;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code chinelog} by itself. */
@Command(
    name = "chinelog",
    description = "Turns the log of a model's build into a web site and printed books.",
    mixinStandardHelpOptions = true,
    versionProvider = TopCommand.OwnVersion.class,
    footer = {"", "Example: ${sys:chinelog.command:-chinelog} publish sample-log"})
final class TopCommand implements Runnable {

  /** Version, date and commit. */
  static final class OwnVersion implements IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {ProgramVersion.own().toString()};
    }
  }

  @Spec private CommandSpec spec;

  TopCommand() {
    this.spec = CommandSpec.create();
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "Name a command.");
  }
}
