package chinelog.cli;

import chinelog.publish.Version;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code chinelog manual}. */
@Command(
    name = "manual",
    description = "Print the manual page, as the command man reads it.",
    footer = {"", "Example: ${sys:chinelog.command:-chinelog} manual > chinelog.1"})
final class ManualCommand implements Runnable {

  @Spec private CommandSpec spec = CommandSpec.create();

  @SuppressWarnings("unused") // picocli asks for it by itself
  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  private boolean help;

  private final Talk talk;

  ManualCommand(Talk talk) {
    this.talk = talk;
  }

  @Override
  public void run() {
    talk.out().print(ManualPage.of(spec.root().commandLine(), Version.own()));
    talk.out().flush();
  }
}
