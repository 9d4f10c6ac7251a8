package chinelog.cli;

import chinelog.problem.Problem;
import chinelog.publish.Outcome;
import chinelog.publish.Publisher;
import java.io.IOException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What {@code publish} and {@code audit} have in common. */
abstract class EditionCommand extends ReadCommand {

  static final String NOTHING_PUBLISHED = "Nothing was published; what stood before still stands.";

  @Option(
      names = "--for",
      paramLabel = "READERS",
      description = "Only for these readers; may be given again. Default: all.")
  private List<String> readers = new ArrayList<>();

  @Option(
      names = "--as-of",
      paramLabel = "DATE",
      description = "As on this day, such as 2026-05-20. Default: today.")
  private @Nullable LocalDate asOf;

  EditionCommand(Terminal talk, Clock clock) {
    super(talk, clock);
  }

  /** Does the work for the readers named. */
  abstract Outcome run(Publisher publisher, List<String> readers) throws IOException;

  /** What has become of the editions after an error. */
  abstract String afterErrors();

  /** What has become of the editions after a leak. */
  abstract String afterLeaks();

  /** Tells an outcome without errors. */
  abstract void tell(Outcome outcome) throws IOException;

  @Override
  public Integer call() throws IOException {
    LocalDate day = asOf == null ? today() : asOf;
    if (day.isAfter(today())) {
      throw wrong(
          day
              + " is yet to come, and an agreement that ends before it would be taken as ended."
              + " Write a day that is past, or leave out --as-of.");
    }
    Publisher publisher =
        new Publisher(requireFolder(folder()), today(), day, zone(), talk().progress());
    tellNewer(folder());
    Outcome outcome;
    try {
      outcome = run(publisher, readers);
    } finally {
      talk().endProgress();
    }
    talk().problems(outcome.problems().stream().filter(Problem::isError).toList());
    talk().problems(outcome.remindersOfEditions());
    long reminders = outcome.ofLog().stream().filter(p -> !p.isError()).distinct().count();
    if (reminders > 0 && !talk().quiet()) {
      talk()
          .err()
          .println(
              Terminal.count(reminders, "reminder")
                  + " besides; see them with: "
                  + Terminal.command("check", folder()));
    }
    if (outcome.hasErrors()) {
      talk().err().println(afterErrors());
      return Main.PROBLEMS;
    }
    if (outcome.hasLeaks()) {
      talk().findings(outcome, afterLeaks() + " The report is in records/.");
      return Main.LEAK;
    }
    tell(outcome);
    return Main.DONE;
  }
}
