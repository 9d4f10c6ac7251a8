package chinelog.cli;

import chinelog.problem.Problem;
import chinelog.problem.Sentence;
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

  static final Sentence NOTHING_PUBLISHED =
      Sentence.of("Nothing was published; what stood before still stands.");

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
  abstract Sentence afterErrors();

  /** What has become of the editions after a leak. */
  abstract Sentence afterLeaks();

  /** Tells an outcome without errors. */
  abstract void tell(Outcome outcome) throws IOException;

  @Override
  public Integer call() throws IOException {
    LocalDate day = asOf == null ? today() : asOf;
    if (day.isAfter(today())) {
      throw wrong(
          "{0} is yet to come, and an agreement that ends before it would be taken as ended."
              + " Write a day that is past, or leave out --as-of.",
          day);
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
          .warn(
              "{0} besides; see them with: {1}",
              Terminal.counted(reminders, "{0} reminder", "{0} reminders"),
              Terminal.command("check", folder()));
    }
    if (outcome.hasErrors()) {
      talk().warn(afterErrors());
      return Main.PROBLEMS;
    }
    if (outcome.hasLeaks()) {
      talk().findings(outcome, Sentence.of("{0} The report is in records/.", afterLeaks()));
      return Main.LEAK;
    }
    tell(outcome);
    return Main.DONE;
  }
}
