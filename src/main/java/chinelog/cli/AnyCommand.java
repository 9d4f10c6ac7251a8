package chinelog.cli;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What every command has: its help, and where it speaks. */
abstract class AnyCommand {

  @Spec private CommandSpec spec = CommandSpec.create();

  @SuppressWarnings("unused") // picocli asks for it by itself
  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  private boolean help;

  private final Terminal talk;

  AnyCommand(Terminal talk) {
    this.talk = talk;
  }

  CommandSpec spec() {
    return spec;
  }

  Terminal talk() {
    return talk;
  }
}
