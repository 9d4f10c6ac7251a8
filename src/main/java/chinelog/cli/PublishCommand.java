package chinelog.cli;

import chinelog.desk.files.Pins;
import chinelog.publish.Outcome;
import chinelog.publish.ProgramVersion;
import chinelog.publish.Publisher;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code chinelog publish}. */
@Command(
    name = "publish",
    description = "Make the editions of a log, audit them, and put them in place.",
    footer = {
      "",
      "Example: ${sys:chinelog.command:-chinelog} publish sample-log --for public --as-of 2026-05-20"
    })
final class PublishCommand extends EditionCommand {

  @Option(
      names = "--draft",
      description =
          "Make the sites alone, into the workshop, for yourself to look at; nothing counts as"
              + " given out.")
  private boolean draft;

  PublishCommand(Terminal talk, Clock clock) {
    super(talk, clock);
  }

  @Override
  Outcome run(Publisher publisher, List<String> readers) throws IOException {
    talk().problems(Pins.pin(folder()));
    return draft ? publisher.draft(readers) : publisher.publish(readers);
  }

  @Override
  String afterErrors() {
    return NOTHING_PUBLISHED;
  }

  @Override
  String afterLeaks() {
    return NOTHING_PUBLISHED;
  }

  @Override
  void tell(Outcome outcome) throws IOException {
    PrintWriter out = talk().out();
    if (draft) {
      for (Outcome.Made site : outcome.editions()) {
        out.println("Draft for " + site.readers() + ":");
        lookAt(site.folder(), site.files());
      }
      return;
    }
    ProgramVersion.own().record(folder());
    for (Outcome.Made edition : outcome.editions()) {
      out.println();
      out.println("For " + edition.readers() + ":");
      out.println(
          "  shown     "
              + Terminal.count(edition.entries(), "entry")
              + ", "
              + Terminal.count(edition.plates(), "plate")
              + ", "
              + Terminal.count(edition.figures(), "figure"));
      if (edition.withheld().isEmpty()) {
        out.println("  withheld  nothing");
      } else {
        out.println(
            "  withheld  "
                + edition.withheld().entrySet().stream()
                    .map(e -> Terminal.count(e.getValue(), "thing") + " under " + e.getKey())
                    .collect(Collectors.joining(", ")));
      }
      if (edition.released() > 0) {
        out.println(
            "  released  " + Terminal.count(edition.released(), "thing") + ", by permission");
      }
      out.println("  audit     clean");
      lookAt(edition.folder(), edition.files());
    }
    for (Outcome.Unchanged edition : outcome.unchanged()) {
      out.println();
      out.println("For " + edition.readers() + ":");
      out.println("  stands    as it was published and audited; nothing has changed since");
      lookAt(edition.folder(), edition.files());
    }
    out.println();
    out.println("The register of what is withheld, and the audit's report, are in records/.");
  }

  private void lookAt(Path folder, List<String> files) {
    files.forEach(f -> talk().out().println("  look at   " + folder.resolve(f)));
  }
}
