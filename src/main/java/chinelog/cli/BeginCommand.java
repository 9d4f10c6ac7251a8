package chinelog.cli;

import chinelog.log.NewLog;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code chinelog begin}. */
@Command(
    name = "begin",
    description =
        "Lay down a new log, with a commented log.yaml and a first entry. On a terminal, it asks"
            + " for name and scale.",
    footer = {
      "",
      "Example: ${sys:chinelog.command:-chinelog} begin my-build --name Merrow --scale 1:16"
    })
final class BeginCommand extends LogCommand {

  @Parameters(paramLabel = "FOLDER", description = "A folder that does not exist yet, or is empty.")
  private Path folder = Path.of("");

  @Option(names = "--name", paramLabel = "NAME", description = "What is built, such as Merrow.")
  private @Nullable String name;

  @Option(
      names = "--scale",
      paramLabel = "SCALE",
      description = "Such as 1:16, 16, or \"1/4 in = 1 ft\".")
  private @Nullable String scale;

  BeginCommand(Terminal talk, Clock clock) {
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
          "\u201c{0}\u201d holds something already, and nothing of yours is overwritten."
              + " Name a new folder.",
          folder);
    }
    NewLog.layDown(folder, today(), new NewLog.Beginning(name(), scale()));
    talk().say("A new log lies in {0}.", folder);
    talk().say("Open log.yaml in any editor; its comments say what goes where.");
    talk().say("Then: {0}", Terminal.command("check", folder));
    return Main.DONE;
  }

  private String name() {
    String given = name;
    return given == null
        ? talk().ask("What do you build? Its name, such as Merrow:")
        : given.strip();
  }

  private String scale() {
    String given = scale;
    if (given != null) {
      return NewLog.scale(given)
          .orElseThrow(
              () ->
                  wrong(
                      "\u201c{0}\u201d is not a scale. Write such as 1:16, or 1/4 in = 1 ft.",
                      given));
    }
    String answer = talk().ask("At what scale? Such as 1:16; nothing if that is not settled:");
    Optional<String> understood = NewLog.scale(answer);
    while (!answer.isEmpty() && understood.isEmpty()) {
      answer = talk().ask("That is not a scale. Write such as 1:16, or 1/4 in = 1 ft:");
      understood = NewLog.scale(answer);
    }
    return understood.orElse("");
  }
}
