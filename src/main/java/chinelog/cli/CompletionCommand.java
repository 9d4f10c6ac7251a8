package chinelog.cli;

import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code chinelog completion}. */
@Command(
    name = "completion",
    description = "Print what makes bash and zsh complete the commands of chinelog.",
    footer = {"", "Example: ${sys:chinelog.command:-chinelog} completion > chinelog.bash"})
final class CompletionCommand implements Runnable {

  @Spec private CommandSpec spec = CommandSpec.create();

  @SuppressWarnings("unused") // picocli asks for it by itself
  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  private boolean help;

  private final Talk talk;

  CompletionCommand(Talk talk) {
    this.talk = talk;
  }

  @Override
  public void run() {
    talk.out().print(AutoComplete.bash("chinelog", spec.root().commandLine()));
    talk.out().flush();
  }
}
