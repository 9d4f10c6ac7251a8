package chinelog.cli;

import chinelog.desk.Desk;
import chinelog.desk.files.Pins;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code chinelog open}. */
@Command(
    name = "open",
    description = "Open a log in the browser, to keep it, mark it and publish it.",
    footer = {"", "Example: ${sys:chinelog.command:-chinelog} open sample-log"})
final class OpenCommand extends LogCommand {

  @Parameters(
      paramLabel = "LOG",
      arity = "0..1",
      description =
          "The log's folder; one that is not there yet is begun. Default: this folder, if a log"
              + " lies in it; else a few questions begin one.")
  private @Nullable Path log;

  @Option(
      names = "--no-browser",
      description = "Only tell the address, and leave it to you to open it.")
  private boolean noBrowser;

  OpenCommand(Terminal talk, Clock clock) {
    super(talk, clock);
  }

  @Override
  Path folder() {
    return log == null ? Path.of("") : log;
  }

  @Override
  public Integer call() throws IOException {
    Path asked = log;
    boolean isHere = asked == null && Files.isRegularFile(Path.of("log.yaml"));
    if (asked == null && !isHere) {
      return serve(Desk.begin(Path.of("my-build").toAbsolutePath(), clock()));
    }
    Path folder = (asked == null ? Path.of("") : asked).toAbsolutePath().normalize();
    if (Files.notExists(folder) || isEmptyFolder(folder)) {
      return serve(Desk.begin(folder, clock()));
    }
    requireFolder(folder);
    Optional<URI> elsewhere = Desk.findOpen(folder);
    if (elsewhere.isPresent()) {
      tell(elsewhere.get(), Sentence.of("The log is open already, at:"));
      return Main.DONE;
    }
    talk().problems(Pins.pin(folder));
    return serve(Desk.open(folder, clock()));
  }

  private int serve(Desk open) throws IOException {
    try (Desk desk = open) {
      tell(desk.address(), Sentence.of("The log is open, on this machine alone, at:"));
      talk().say("Close it at the foot of Today, or with Ctrl+C.");
      desk.awaitLeaving();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return Main.DONE;
  }

  private void tell(URI address, Sentence words) {
    result().println(words.in(talk().language()));
    result().println("  " + address);
    if (!noBrowser) {
      show(address);
    }
  }

  /** Opens the address as the system opens addresses; whoever has no such command reads it. */
  private static void show(URI address) {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    List<String> command =
        system.contains("win")
            ? List.of("rundll32", "url.dll,FileProtocolHandler", address.toString())
            : List.of(system.contains("mac") ? "open" : "xdg-open", address.toString());
    try {
      new ProcessBuilder(command)
          .redirectOutput(ProcessBuilder.Redirect.DISCARD)
          .redirectError(ProcessBuilder.Redirect.DISCARD)
          .start();
    } catch (IOException e) {
      // The address was told.
    }
  }
}
