package chinelog.cli;

import chinelog.desk.Desk;
import chinelog.desk.files.Pins;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code chinelog open}. */
@Command(
    name = "open",
    description = "Open a log in the browser, to keep it, mark it and publish it.",
    footer = {"", "Example: ${sys:chinelog.command:-chinelog} open sample-log"})
final class OpenCommand extends LogCommand {

  @Parameters(paramLabel = "LOG", description = "The log's folder.")
  private Path log = Path.of("");

  @Option(
      names = "--no-browser",
      description = "Only tell the address, and leave it to you to open it.")
  private boolean noBrowser;

  OpenCommand(Talk talk, Clock clock) {
    super(talk, clock);
  }

  @Override
  Path folder() {
    return log;
  }

  @Override
  public Integer call() throws IOException {
    requireFolder(log);
    Optional<URI> elsewhere = Desk.findOpen(log);
    if (elsewhere.isPresent()) {
      tell(elsewhere.get(), "The log is open already, at:");
      return Main.DONE;
    }
    talk().problems(Pins.pin(log));
    try (Desk desk = Desk.open(log, clock())) {
      tell(desk.address(), "The log is open, on this machine alone, at:");
      talk().out().println("Close it with Ctrl+C.");
      new CountDownLatch(1).await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return Main.DONE;
  }

  private void tell(URI address, String words) {
    result().println(words);
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
