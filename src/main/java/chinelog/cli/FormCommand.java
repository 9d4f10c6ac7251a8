package chinelog.cli;

import chinelog.publish.Forms;
import chinelog.publish.Outcome;
import chinelog.publish.Workshop;
import java.io.IOException;
import java.time.Clock;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code chinelog form}. */
@Command(
    name = "form",
    description = "Print an agreement, or a page that asks leave to show a thing.",
    footer = {
      "",
      "Neither is legal advice: have it looked at by a licensed lawyer.",
      "",
      "Example: ${sys:chinelog.command:-chinelog} form sample-log agreement lines",
      "         ${sys:chinelog.command:-chinelog} form sample-log release full.beam --for public"
    })
final class FormCommand extends ReadCommand {

  /** What can be printed. */
  enum Kind {
    AGREEMENT,
    RELEASE
  }

  @Parameters(index = "1", paramLabel = "KIND", description = "agreement or release.")
  private Kind kind = Kind.AGREEMENT;

  @Parameters(
      index = "2",
      paramLabel = "NAME",
      description =
          "The agreement; or the thing to be released: a fact, an entry, a photograph, a sheet.")
  private String name = "";

  @Option(
      names = "--for",
      paramLabel = "READERS",
      description = "Who is to see the thing; may be given again. Default: public.")
  private List<String> readers = List.of("public");

  @Option(
      names = "--under",
      paramLabel = "AGREEMENT",
      description = "Whom to ask, for a thing that is under several.")
  private String under = "";

  FormCommand(Terminal talk, Clock clock) {
    super(talk, clock);
  }

  @Override
  public Integer call() throws IOException {
    Workshop.Opened opened =
        Workshop.open(requireFolder(folder()), today(), today(), zone(), talk().progress());
    if (opened.hasErrors()) {
      talk().endProgress();
      talk().problems(opened.problems().stream().filter(p -> p.isError()).toList());
      return Main.PROBLEMS;
    }
    Forms forms = new Forms(opened, today(), talk().progress());
    Forms.Made made;
    try {
      made = kind == Kind.AGREEMENT ? forms.agreement(name) : forms.release(name, under, readers);
    } finally {
      talk().endProgress();
    }
    talk().problems(made.problems());
    for (Outcome.Finding finding : made.findings()) {
      talk().err().println(finding.in(talk().language()));
    }
    if (made.file().isEmpty()) {
      return made.findings().isEmpty() ? Main.PROBLEMS : Main.LEAK;
    }
    talk().say("The form lies in {0}.", made.file().get());
    talk().say("It is no legal advice: have it looked at by a licensed lawyer.");
    if (!made.line().isEmpty()) {
      talk().say("Once leave is given, write below \u201creleases:\u201d in log.yaml:");
      talk().out().println("  " + made.line());
    }
    return Main.DONE;
  }
}
