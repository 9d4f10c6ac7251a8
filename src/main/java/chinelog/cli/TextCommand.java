package chinelog.cli;

import chinelog.publish.ProgramVersion;
import java.util.function.Function;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Prints a text that is made from the commands themselves. */
abstract class TextCommand extends AnyCommand implements Runnable {

  private final Function<CommandLine, String> text;

  private TextCommand(Terminal talk, Function<CommandLine, String> text) {
    super(talk);
    this.text = text;
  }

  @Override
  public final void run() {
    talk().out().print(text.apply(spec().root().commandLine()));
    talk().out().flush();
  }

  /** {@code chinelog completion}. */
  @Command(
      name = "completion",
      description = "Print what makes bash and zsh complete the commands of chinelog.",
      footer = {"", "Example: ${sys:chinelog.command:-chinelog} completion > chinelog.bash"})
  static final class Completion extends TextCommand {
    Completion(Terminal talk) {
      super(talk, root -> AutoComplete.bash("chinelog", root));
    }
  }

  /** {@code chinelog manual}. */
  @Command(
      name = "manual",
      description = "Print the manual page, as the command man reads it.",
      footer = {"", "Example: ${sys:chinelog.command:-chinelog} manual > chinelog.1"})
  static final class Manual extends TextCommand {
    Manual(Terminal talk) {
      super(talk, root -> ManualPage.of(root, ProgramVersion.own()));
    }
  }
}
