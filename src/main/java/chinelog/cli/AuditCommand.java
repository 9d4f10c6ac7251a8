package chinelog.cli;

import chinelog.problem.Sentence;
import chinelog.publish.Outcome;
import chinelog.publish.Publisher;
import java.io.IOException;
import java.time.Clock;
import java.util.List;
import picocli.CommandLine.Command;

/** {@code chinelog audit}. */
@Command(
    name = "audit",
    description = "Audit again what stands published.",
    footer = {"", "Example: ${sys:chinelog.command:-chinelog} audit sample-log --for public"})
final class AuditCommand extends EditionCommand {

  AuditCommand(Terminal talk, Clock clock) {
    super(talk, clock);
  }

  @Override
  Outcome run(Publisher publisher, List<String> readers) throws IOException {
    return publisher.audit(readers);
  }

  @Override
  Sentence afterErrors() {
    return Sentence.of("Nothing was audited; put the log right first.");
  }

  @Override
  Sentence afterLeaks() {
    return Sentence.of("Take the edition off wherever it has been put up, and publish it anew.");
  }

  @Override
  void tell(Outcome outcome) {
    outcome
        .editions()
        .forEach(
            e ->
                talk()
                    .say(
                        "{0}: clean. The report is in {1}.",
                        e.readers(), "records/" + e.readers() + "/audit.txt"));
  }
}
